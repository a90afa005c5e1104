import { moneyText, type Currency } from '../base/money.ts'
import type { MachineDocument, MachineState } from '../bench/contract.ts'
import { driesAfter } from '../facts/cleaning-tasks.ts'
import { complaints } from '../facts/complaints.ts'
import { readMarks } from '../machine/index.ts'
import type { ShelfOffer } from '../machine/shelf/shelf-offer.ts'
import type { CheckMove, CoverStep, ExitMove, MachineView, MoveView, RepairMove } from '../machine/view.ts'
import { byText, type Names } from './who-wrote.ts'

/** The part of the shelf that a repair reckons with: `From the shelf: Motor 1,200 W (box 3), stands at £2.10, would fetch £6.00`. */
export const offerText = ({ name, place, costMinor, fetchesMinor, fit }: ShelfOffer, currency: Currency): string =>
  [
    `${name}${place === '' ? '' : ` (${place})`}`,
    `stands at ${moneyText(costMinor, currency)}`,
    `would fetch ${moneyText(fetchesMinor, currency)}`,
    ...(fit.kind === 'fits' ? [] : [`may fit; to find out: ${fit.unknown.join('; ')}`]),
  ].join(', ')

/** A machine and its next move as plain lines for a terminal. `names`: of people, by id. */
export const machineLines = (
  document: MachineDocument,
  view: MachineView,
  names: Names = new Map(),
): readonly string[] => {
  const { state } = document
  const money = (minor: number): string => moneyText(minor, state.currency)
  const { worth } = view
  return [
    `${state.name}${state.model === '' ? '' : `, model ${state.model}`} (${state.id}), version ${state.version}`,
    claimLine(state),
    `Spent ${money(state.paidMinor + state.spentMinor)} and ${Math.round(state.minutes)} min · as it stands ${money(worth.asItStandsMinor)} · if you carry on ${money(worth.carryOnMinor)} ± ${money(worth.spreadMinor)}`,
    ...riskLines(view, money),
    ...lifeLines(document),
    ...view.redFlags.map((flag) => `! ${flag.text}`),
    ...state.drying.map(dryingLine),
    ...(view.unexplained === null ? [] : [`? ${view.unexplained.text}`]),
    '',
    ...(state.left === null ? ['Next:', ...moveLines(view.next, state.currency).map((line) => `  ${line}`), ''] : []),
    'Suspects:',
    ...view.suspects.map((suspect) => `  ${percent(suspect.probability)}  ${suspect.name}`),
    '',
    ...notesText(document, names),
  ]
}

/** The notes of a machine, each with who wrote it. */
export const notesText = ({ lines }: Pick<MachineDocument, 'lines'>, names: Names): readonly string[] => [
  'Notes:',
  ...lines.map(
    ({ id, seq, at, text, by, struck }) =>
      `  ${seq}. ${at.slice(11, 16)} ${text}${byText(by, names)}${struck ? '  [struck out]' : ''}  (${id})`,
  ),
]

/** Something wet must not be run with, nor sold as working. */
const dryingLine = ({ task, readyAt }: MachineState['drying'][number]): string =>
  `! ${driesAfter(task)} not found dry yet; should be dry at ${readyAt}. Do not run it or sell it as working before`

/** What a cautious bench is told of the next move. */
const riskLines = ({ next, worth }: MachineView, money: (minor: number) => string): readonly string[] =>
  next.lossProbability === null
    ? []
    : [
        `Cautious: loses money ${percent(next.lossProbability).trim()} of the time; that costs ${money(worth.cautionCostsMinor)} on average`,
      ]

/** Age and use as said, and what the date marks say. */
const lifeLines = ({ state, notes }: MachineDocument): readonly string[] => {
  const known = [
    ...(state.ageYears === null ? [] : [`about ${state.ageYears} years old`]),
    ...(state.wear === null ? [] : [`${state.wear} use`]),
  ]
  const marks = readMarks(state.marks, state.plate.powerW, (notes.at(-1)?.at ?? state.addedAt).slice(0, 10))
  const built =
    marks.windowText === null
      ? []
      : [
          `Date marks: put together ${marks.windowText}${marks.ageYears === null ? '' : `, about ${marks.ageYears} years old`}`,
        ]
  const flagged = marks.marks.flatMap(({ note, flag }) =>
    flag === null ? [] : [`  ${state.marks.find((mark) => mark.note === note)?.part ?? ''}: ${flag}`],
  )
  return [...(known.length === 0 ? [] : [`Known of it: ${known.join(', ')}`]), ...built, ...flagged]
}

const percent = (p: number): string => `${(p * 100).toFixed(1).padStart(5)} %`

const claimLine = (state: MachineState): string => {
  const named = state.claimed.complaints.map((id) => complaints[id]).join('; ')
  return `Claimed: ${named || 'nothing'}${state.claimed.words === '' ? '' : ` (“${state.claimed.words}”)`}`
}

/** One move as lines: what to do, with what open, and what it would show. */
export const moveLines = (move: MoveView, currency: Currency): readonly string[] => {
  const name = move.kind === 'repair' ? `${move.name}: ${move.optionName}` : move.name
  const head = `${name} [${moveCode(move)}]  ${minutes(move.minutes)}, expected ${moneyText(move.expectedMinor, currency)}`
  const covers = [
    ...move.close.map((cover) => coverLine('Put back', cover)),
    ...move.open.map((cover) => coverLine('Take off', cover)),
  ]
  return [
    head,
    ...(move.how === '' ? [] : [move.how]),
    ...covers,
    ...ownLines(move, currency),
    `Why: ${move.why}`,
    ...(move.caution === null ? [] : [`Caution: ${move.caution}`]),
  ]
}

const minutes = (value: number): string => `${Math.round(value * 10) / 10} min`
const coverLine = (verb: string, cover: CoverStep): string =>
  `${verb}: ${cover.name} (${cover.fixings}, ${minutes(cover.minutes)})`

const moveCode = (move: MoveView): string => (move.kind === 'repair' ? `${move.repair} ${move.option}` : move.id)

const ownLines = (move: MoveView, currency: Currency): readonly string[] => {
  switch (move.kind) {
    case 'check':
      return checkLines(move, currency)
    case 'repair':
      return repairLines(move, currency)
    case 'exit':
      return exitLines(move)
  }
}

const checkLines = (move: CheckMove, currency: Currency): readonly string[] => [
  ...move.setUp,
  ...(move.probes === null ? [] : [`Red probe: ${move.probes.red.name}`, `Black probe: ${move.probes.black.name}`]),
  ...move.expected.map(({ under, text }) => `If ${under}: ${text}`),
  ...move.remarks,
  ...(move.choices.length === 0 ? [] : [`Results: ${move.choices.map((choice) => choice.id).join(', ')}, cannot-tell`]),
  `Knowing is worth ${moneyText(move.informationMinor, currency)}`,
]

const repairLines = (move: RepairMove, currency: Currency): readonly string[] => [
  `Parts ${moneyText(move.costLowMinor, currency)} to ${moneyText(move.costHighMinor, currency)}`,
  ...(move.shelf === null ? [] : [`From the shelf: ${offerText(move.shelf, currency)} (${move.shelf.id})`]),
]

const exitLines = (_move: ExitMove): readonly string[] => []
