import type { Currency } from '../base/money.ts'
import type { Source } from '../base/source.ts'
import { improvements } from './asking.ts'
import type { CleaningAdds, CleaningTask } from './cleaning-task.ts'
import { costFact, currencyRegion } from './trade-costs.ts'

const bench = (clause: string, evidence: Source['evidence'] = 'judgement'): Source => ({
  title: 'Cleaning mains vacuum cleaners on a small bench, UK street level 2024–26',
  clause,
  evidence,
})

/** A share of a clean machine: the weights say how much of what a buyer sees as clean each task makes. Judgement. */
const clean = (weight: number): CleaningAdds => ({ kind: 'improvement', improvement: 'cleaned', weight })
const filters = (weight: number): CleaningAdds => ({ kind: 'improvement', improvement: 'new-filters', weight })
const nothing: CleaningAdds = { kind: 'nothing' }

const wet = ['plug-out', 'water-away', 'hot-water', 'no-solvents'] as const

/**
 * What can be cleaned or renewed before a machine is sold, in the order of work. Minutes, materials and drying times are those of
 * the trade; of a range the middle is taken. Drying: in a warm dry room, and in a cold or damp one, where nothing else is said
 * twice as long.
 */
export const cleaningTasks = {
  'dust-out': {
    name: 'Empty it and blow it out, outside',
    done: 'emptied and blown out',
    how: 'Bag or bin out and tied up; brush and vacuum every chamber and duct that can be reached.',
    at: 'machine',
    minutes: 8,
    ukCostMinor: 20,
    must: { why: 'Another household’s dust never goes to a buyer' },
    adds: clean(10),
    cautions: ['plug-out', 'dust-outside', 'mask', 'unknown-dust'],
    source: bench('bag out, blow-out or vacuum outdoors: 8 minutes, £0.20'),
  },
  'new-bag': {
    name: 'New bag',
    how: 'Fit it last, so that it is empty when it is sold. Photograph the packet.',
    at: { parts: ['bag'] },
    minutes: 1,
    ukCostMinor: 100,
    must: { why: 'A used bag is another household’s dust' },
    adds: filters(2),
    cautions: ['dust-outside', 'mask'],
    source: bench('always: bag; bag and filters 3 minutes; a spare bag £1'),
  },
  'new-motor-filter': {
    name: 'New pre-motor filter',
    how: 'A new one, or proved clean; mind the way round. Photograph the packet.',
    at: { parts: ['pre-motor-filter'] },
    minutes: 1,
    ukCostMinor: 550,
    must: { why: 'Always renewed or proved clean: most returns are a blocked or wet filter' },
    adds: filters(2),
    cautions: ['dust-outside', 'mask'],
    source: bench('always: pre-motor filter, £3 to £8; bag and filters 3 minutes'),
  },
  'wash-filter': {
    name: 'Wash the pre-motor filter',
    done: 'pre-motor filter washed',
    how: 'Only if it is marked washable: rinse in cold water until it runs clear, squeeze out, stand it on its edge.',
    at: { parts: ['pre-motor-filter'] },
    minutes: 5,
    ukCostMinor: 0,
    dries: { what: 'Pre-motor filter', warm: 24, damp: 48 },
    insteadOf: 'new-motor-filter',
    adds: nothing,
    cautions: ['cold-water-only', 'dry-through', 'no-heat'],
    source: {
      title: 'User guide of a mains vacuum cleaner, care of its washable filter',
      clause: 'dry for at least 24 hours in a warm place; 48 hours where cold or humid is judgement',
      evidence: 'retrieved',
    },
  },
  'new-exhaust-filter': {
    name: 'New exhaust filter',
    how: 'A new one, or prove the old one by the suction with it in and out.',
    at: { parts: ['exhaust-filter'] },
    minutes: 1,
    ukCostMinor: 1000,
    adds: filters(1),
    cautions: ['dust-outside', 'mask'],
    source: bench('usually: exhaust filter, £6 to £14, or prove it by flow'),
  },
  'new-belt': {
    name: 'New belt',
    how: 'Clean the pulley, see which way the old one ran, spin the roll by hand after.',
    at: { parts: ['belt'] },
    minutes: improvements['new-belt'].minutes,
    ukCostMinor: improvements['new-belt'].costMinor,
    must: { why: 'A flat rubber belt is renewed as a matter of course', only: 'flat-belt' },
    adds: { kind: 'improvement', improvement: 'new-belt', weight: 1 },
    cautions: ['plug-out'],
    source: improvements['new-belt'].source,
  },
  'wash-casing': {
    name: 'Wash the casing',
    done: 'casing washed',
    how: 'Loose covers and bare shells: lukewarm water, a drop of neutral detergent, a soft brush, rinse. No dishwasher.',
    at: { parts: ['casing'] },
    minutes: 15,
    ukCostMinor: 30,
    dries: { what: 'Casing', warm: 2, damp: 6 },
    adds: clean(30),
    cautions: [...wet, 'keep-labels', 'test-after-wet'],
    source: bench('wash casings: 15 minutes, dry in 2 to 6 hours, £0.30'),
  },
  'wash-bin': {
    name: 'Wash the bin and its cones',
    done: 'bin and cones washed',
    how: 'Apart as far as it goes without force; rinse the cones from both ends and shake them out.',
    at: { parts: ['bin', 'cyclone', 'drum'] },
    minutes: 12,
    ukCostMinor: 20,
    dries: { what: 'Bin and cones', warm: 24, damp: 48 },
    adds: clean(15),
    cautions: [...wet, 'spot-test', 'dry-through'],
    source: bench('bin or separator wash: 12 minutes, dry in 24 to 48 hours, £0.20; cones hold water'),
  },
  'wash-hose': {
    name: 'Clean the hose through',
    done: 'hose cleaned through',
    how: 'Drag a rag through on a cord, or soak it and hang it up by its middle.',
    at: { parts: ['hose'], unless: 'hose-conductors' },
    minutes: 10,
    ukCostMinor: 40,
    dries: { what: 'Hose', warm: 24, damp: 48 },
    adds: clean(8),
    cautions: ['hot-water', 'dry-through', 'no-heat'],
    source: bench('hose: 8 to 12 minutes, dry in 24 hours, £0.40'),
  },
  'wipe-hose': {
    name: 'Wipe the hose: it has wires in it',
    done: 'hose wiped',
    how: 'A wrung-out cloth on the outside only; a dry rag through the bore. Nothing wet near the ends.',
    at: { parts: ['hose-conductors'] },
    minutes: 4,
    ukCostMinor: 10,
    dries: { what: 'Hose', warm: 0.5, damp: 1 },
    adds: clean(8),
    cautions: ['plug-out', 'water-away'],
    source: bench('electrified hose: wipe only; minutes as for a flex'),
  },
  roll: {
    name: 'Clear and comb the brush roll',
    done: 'brush roll cleared and combed',
    how: 'Cut the hair out, clear the end caps, comb the bristles, wash what is bare plastic. It must spin two or three turns.',
    at: { parts: ['brush-roll'] },
    minutes: 12,
    ukCostMinor: 10,
    dries: { what: 'Brush roll', warm: 2, damp: 4 },
    adds: clean(12),
    cautions: ['plug-out', 'cut-away', 'water-away'],
    source: bench('roll: 10 to 15 minutes, dry in 2 hours, £0.10'),
  },
  head: {
    name: 'Wash the floor head and sole plate',
    done: 'floor head and sole plate washed',
    how: 'Hair out of wheels and flaps, then a brush and detergent; a head with a motor or wires in it is wiped only.',
    at: { parts: ['floor-head', 'sole-plate', 'turbine'] },
    minutes: 8,
    ukCostMinor: 10,
    dries: { what: 'Floor head', warm: 2, damp: 6 },
    adds: clean(10),
    cautions: [...wet],
    source: bench('floor head: minutes judged, drying as for casings'),
  },
  tubes: {
    name: 'Wash tubes and hand grip',
    done: 'tubes and hand grip washed',
    how: 'Bottle brush and detergent through the bore; nothing wet where a tube carries wires.',
    at: { parts: ['wand', 'hose-grip'], unless: 'hose-conductors' },
    minutes: 6,
    ukCostMinor: 10,
    dries: { what: 'Tubes', warm: 2, damp: 6 },
    adds: clean(5),
    cautions: ['hot-water', 'no-solvents'],
    source: bench('tubes: minutes judged, drying as for casings'),
  },
  'cloth-bag': {
    name: 'Clean the outer cloth bag',
    done: 'outer cloth bag cleaned',
    how: 'Shake and brush it inside out, outside; wash by hand only where its label lets you.',
    at: { parts: ['cloth-bag'] },
    minutes: 10,
    ukCostMinor: 20,
    dries: { what: 'Cloth bag', warm: 24, damp: 48 },
    adds: clean(12),
    cautions: ['dust-outside', 'mask', 'dry-through'],
    source: bench('outer bag: judged, drying as for filters'),
  },
  flex: {
    name: 'Wipe the flex',
    done: 'flex wiped',
    how: 'All of it out; a damp cloth with detergent from machine to plug, the plug itself dry. Look for cuts on the way.',
    at: { parts: ['flex'] },
    minutes: 4,
    ukCostMinor: 10,
    dries: { what: 'Flex', warm: 0.5, damp: 1 },
    adds: clean(6),
    cautions: ['plug-out', 'water-away', 'reel-spring'],
    source: bench('flex: 4 minutes, dry in half an hour, £0.10; looks and winds in better'),
  },
  wheels: {
    name: 'Clear the wheels',
    done: 'wheels cleared',
    how: 'Hair off the axles with a hook; wipe; they must roll.',
    at: { parts: ['wheels'] },
    minutes: 6,
    ukCostMinor: 0,
    dries: { what: 'Wheels', warm: 1, damp: 2 },
    adds: clean(4),
    cautions: ['plug-out', 'cut-away'],
    source: bench('wheels and castors: 6 minutes, dry in 1 hour'),
  },
  seals: {
    name: 'Wipe the seals',
    done: 'seals wiped',
    how: 'Damp cloth round every rubber lip, re-seat it, a thin film of silicone-safe conditioner.',
    at: { parts: ['bag-door-seal', 'bin-seal', 'drum-seal'] },
    minutes: 4,
    ukCostMinor: 20,
    adds: clean(2),
    cautions: ['hot-water', 'no-solvents'],
    source: bench('seals: 4 minutes, £0.20'),
  },
  'motor-dust': {
    name: 'Dust off the motor',
    done: 'motor dusted off',
    how: 'Soft dry brush and a vacuum at the air slots. Nothing wet, no spray.',
    at: { parts: ['suction-motor'] },
    minutes: 6,
    ukCostMinor: 0,
    adds: nothing,
    cautions: ['plug-out', 'water-away', 'mask'],
    source: bench('motor: soft brush and vacuum, 6 minutes, no liquid'),
  },
  residue: {
    name: 'Labels and sticky marks off',
    done: 'labels and sticky marks taken off',
    how: 'Lukewarm water first; what stays, a brief wipe of alcohol.',
    at: { parts: ['casing'] },
    minutes: 5,
    ukCostMinor: 20,
    adds: clean(3),
    cautions: ['spot-test', 'no-solvents', 'keep-labels'],
    source: bench('sticker residue: 5 minutes, £0.20'),
  },
  trims: {
    name: 'Freshen black trims',
    done: 'black trims freshened',
    how: 'Trim restorer on a rag. Heat warps.',
    at: { parts: ['casing'] },
    minutes: 6,
    ukCostMinor: 40,
    adds: clean(3),
    cautions: ['no-heat'],
    source: bench('dull black trims: 6 minutes, £0.40'),
  },
  'final-wipe': {
    name: 'Last wipe, inside too',
    done: 'wiped at last, inside too',
    how: 'When it is together again: bag chamber, lids, handle, and what the camera will see.',
    at: 'machine',
    minutes: 8,
    ukCostMinor: 20,
    adds: clean(8),
    cautions: ['plug-out', 'keep-labels'],
    source: bench('final wipe: 8 minutes, £0.20'),
  },
  scuffs: {
    name: 'Rub out scuffs, polish',
    done: 'scuffs rubbed out and polished',
    how: 'Melamine sponge, hardly pressed, then plastic polish.',
    at: { parts: ['casing'] },
    minutes: 12,
    ukCostMinor: 40,
    adds: { kind: 'grade', from: ['C'] },
    cautions: ['polish-after', 'no-solvents'],
    source: bench('scuffs: 10 to 15 minutes, £0.40; that it lifts the looks by a grade is judged'),
  },
  scratches: {
    name: 'Rub down scratches',
    done: 'scratches rubbed down',
    how: 'Wet paper 1500, 2000, 3000, then compound and wax. Solid-colour gloss only, never clear or textured.',
    at: { parts: ['casing'] },
    minutes: 30,
    ukCostMinor: 100,
    dries: { what: 'Rubbed-down casing', warm: 0.5, damp: 1 },
    adds: { kind: 'grade', from: ['B'] },
    cautions: ['water-away', 'mask'],
    source: bench('scratches: 20 to 40 minutes, £1.00; that it lifts the looks by a grade is judged'),
  },
  mould: {
    name: 'Mould out',
    done: 'mould taken out',
    how: 'Bag, filters, foam and felt thrown away sealed; hard parts washed with detergent, dried, vacuumed.',
    at: 'machine',
    minutes: 30,
    ukCostMinor: 1000,
    dries: { what: 'What was washed of mould', warm: 48, damp: 48 },
    when: 'Spots, or it smells of cellar',
    must: { why: 'Never sold with mould in it' },
    adds: nothing,
    cautions: ['mould-discard', 'dust-outside', 'mask', 'test-after-wet'],
    source: bench('mould: 30 minutes, 48 hours, £5 to £15'),
  },
  odour: {
    name: 'Smell out',
    done: 'treated against smell',
    how: 'Detergent, sun and air; a bag of active carbon shut in with it. Bicarbonate in dry parts only, vacuumed out fully. Perfume masks.',
    at: 'machine',
    minutes: 10,
    ukCostMinor: 100,
    dries: { what: 'What was washed and aired', warm: 24, damp: 48 },
    when: 'It smells with a new bag in',
    adds: nothing,
    cautions: ['water-away', 'dry-through'],
    source: bench('odour: 10 minutes, 24 to 48 hours, £1.00'),
  },
  pests: {
    name: 'Vermin: sealed first',
    done: 'treated against vermin',
    how: 'Bag and tie it at once, outside. Soft parts go; hard parts washed. A cheap machine is scrapped sealed.',
    at: 'machine',
    minutes: 60,
    ukCostMinor: 750,
    when: 'Specks, cast skins, anything alive',
    must: { why: 'Never sold or brought indoors with anything alive in it' },
    adds: nothing,
    cautions: ['dust-outside', 'mask'],
    source: bench('fleas, bugs, beetle, moth, mice: 60 minutes, up to £15, often scrap'),
  },
} as const satisfies Readonly<Record<string, CleaningTask>>

export type CleaningTaskId = keyof typeof cleaningTasks
export const cleaningTaskIds = Object.keys(cleaningTasks) as [CleaningTaskId, ...CleaningTaskId[]]

/** The task of this id, or undefined. */
export const cleaningTask = (id: string): CleaningTask | undefined =>
  Object.hasOwn(cleaningTasks, id) ? cleaningTasks[id as CleaningTaskId] : undefined

/** A cleaning that none of the tasks is: told in words, ranked nowhere. */
export const otherCleaning = { id: 'other', name: 'Other cleaning' } as const

/** What dries after a task, in words. */
export const driesAfter = (task: string): string => cleaningTask(task)?.dries?.what ?? 'What was washed'

const materialsMinor = (currency: Currency): number => costFact(currencyRegion(currency), 'materialsMinor').value

/**
 * What a task's materials cost in a currency, minor units: the figure of the United Kingdom, taken up by as much as bag, filters
 * and cleaning stuff cost in the region whose money it is.
 */
export const cleaningCostMinor = ({ ukCostMinor }: Pick<CleaningTask, 'ukCostMinor'>, currency: Currency): number =>
  Math.round((ukCostMinor * materialsMinor(currency)) / materialsMinor('GBP'))
