import type { Source } from '../base/source.ts'

export type CleaningCaution = { readonly text: string; readonly source: Source }

const practice = (clause: string): Source => ({
  title: 'Cleaning mains vacuum cleaners on a small bench',
  clause,
  evidence: 'common practice',
})

const guide = (clause: string): Source => ({
  title: 'User guide of a mains vacuum cleaner, care of its washable filter',
  clause,
  evidence: 'retrieved',
})

/** What must not go wrong in cleaning: each caution as it is read out, with where it comes from. */
export const cleaningCautions = {
  'plug-out': {
    text: 'Plug out and in sight before anything is opened, wiped or turned by hand.',
    source: practice('before work on any mains machine'),
  },
  'dust-outside': {
    text: 'Outside, with the wind from behind. No compressed air indoors.',
    source: practice('bag out, blow-out, vacuum outdoors'),
  },
  mask: {
    text: 'A mask against fine dust: FFP2 or P2 at least.',
    source: practice('dust of other households holds allergens'),
  },
  'unknown-dust': {
    text: 'Grey-white cake, ash, toner or builder’s dust: stop, close it, do not open it indoors. It may be harmful.',
    source: practice('unknown or hazardous dust: refuse or scrap'),
  },
  'water-away': {
    text: 'Water goes on bare plastic only: never on motor, switch, board, plug, flex ends or a hose with wires in it.',
    source: practice('motor: soft brush and vacuum, no liquid'),
  },
  'dry-through': {
    text: 'Dry through before it goes back in. A damp filter clogs, smells, and wets the motor.',
    source: guide('dry for at least 24 hours in a warm place'),
  },
  'no-heat': {
    text: 'Never on a heater, in an oven, microwave or tumble dryer, or by a flame.',
    source: guide('no tumble dryer, microwave, oven or naked flame'),
  },
  'cold-water-only': {
    text: 'Only a filter marked washable. Cold water, no detergent, no machine; paper and most pleats are thrown away.',
    source: guide('cold water only, no detergent'),
  },
  'no-solvents': {
    text: 'No acetone, thinners, brake cleaner or citrus remover on plastic: ABS softens and clear bins craze.',
    source: {
      title: 'Woishnis and Ebnesajjad, Chemical Resistance of Thermoplastics',
      clause: 'ABS: ketones, severe attack, softened in a few hours',
      evidence: 'retrieved',
    },
  },
  'spot-test': {
    text: 'Alcohol: a brief wipe, tried first where nobody sees it, and never on a clear bin.',
    source: practice('70 % isopropanol, brief wipe, spot test'),
  },
  'hot-water': {
    text: 'Lukewarm, not hot: hot water warps casings and swells and hardens rubber seals and belts.',
    source: { ...practice('lukewarm water and neutral detergent'), evidence: 'judgement' },
  },
  'mould-discard': {
    text: 'Mould: throw soft and porous things away, do not brush or wash them. Wipe hard ones wet, outside, masked.',
    source: {
      title: 'Mould remediation guidance as given by the US EPA',
      clause:
        'porous material wet for over 24 to 48 hours is discarded; hard surfaces detergent and water, dried fully',
      evidence: 'retrieved',
    },
  },
  'test-after-wet': {
    text: 'Electrical safety is proved after the wash, once everything is dry, not before.',
    source: practice('after any wet clean: insulation test, dry'),
  },
  'cut-away': {
    text: 'Cut hair along the groove and away from the hand; keep blades off the bristles.',
    source: practice('roll: cut out; bristles are easily cut'),
  },
  'reel-spring': {
    text: 'Do not open the reel for this: its spring flies out.',
    source: practice('cord reel: the spring flies out'),
  },
  'polish-after': {
    text: 'A melamine sponge dulls gloss: try it out of sight, polish after.',
    source: practice('scuffs: sponge, then plastic polish'),
  },
  'keep-labels': {
    text: 'Keep the rating plate and its letters dry and whole: without it the machine is hard to sell.',
    source: practice('wash casings: keep labels dry'),
  },
} as const satisfies Readonly<Record<string, CleaningCaution>>

export type CleaningCautionId = keyof typeof cleaningCautions
