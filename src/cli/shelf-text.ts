import { moneyText } from '../base/money.ts'
import type { GroupLine, Page } from '../bench/ports.ts'
import type { Held } from '../bench/shelf/at-hand.ts'
import { partHistory } from '../bench/shelf/part-history.ts'
import type { PartState } from '../bench/shelf/part-state.ts'
import type { PartDocument } from '../bench/shelf/shelf-commands.ts'
import { partKinds, type PartKind, type SpecField } from '../facts/part-kinds.ts'
import { entryText } from './entry-text.ts'
import type { Names } from './who-wrote.ts'

/** The shelf as lines: the parts, then what there is of each kind and what it stands at. */
export const shelfLines = (
  items: readonly PartState[],
  groups: readonly GroupLine[],
  { total, after }: Pick<Page<unknown>, 'total' | 'after'>,
): readonly string[] => [
  ...items.map(
    (part) =>
      `${part.id}  ${part.count > 1 ? `${part.count} × ` : ''}${part.name}${placeText(part.place)}, stands at ${moneyText(part.costMinor, part.currency)}`,
  ),
  `${total} in all${after === null ? '' : `; further ones: --after ${after}`}`,
  ...groups.map(
    ({ group, count, stockMinor, currency }) =>
      `  ${partKinds[group as PartKind].name}: ${count}, ${moneyText(stockMinor, currency)}`,
  ),
]

const placeText = (place: string): string => (place === '' ? '' : ` (${place})`)

/** One part as lines: what it is, where it lies, and its history. `names`: of those who wrote it, by id. */
export const partLines = (part: PartDocument, names: Names): readonly string[] => {
  const { state } = part
  const money = (minor: number): string => moneyText(minor, state.currency)
  const fields: readonly SpecField[] = partKinds[state.partKind].fields
  const measures = fields.flatMap(({ id, name, unit }) =>
    state.spec[id] === undefined ? [] : [`${name} ${state.spec[id]}${unit === '' ? '' : ` ${unit}`}`],
  )
  return [
    `${state.name} (${state.id}), version ${state.version}`,
    `${partKinds[state.partKind].name}: ${measures.join(', ') || 'no measures yet'}; ${state.condition.replace('-', ' ')}`,
    `${state.count} there${placeText(state.place)}, stands at ${money(state.costMinor)}${state.fetchesMinor === null ? '' : `, one would fetch ${money(state.fetchesMinor)}`}`,
    ...(state.reservedFor === null ? [] : [`Kept for ${state.reservedFor}`]),
    '',
    ...partHistory(part).map((line) => entryText(line, names)),
  ]
}

/** What the shelf holds for a machine, part by part. */
export const fitsLines = (
  fits: readonly { readonly part: string; readonly name: string; readonly held: readonly Held[] }[],
): readonly string[] =>
  fits.length === 0
    ? ['Nothing on the shelf is of the kind of its parts']
    : fits.flatMap(({ part, name, held }) => [
        `${name} [${part}]`,
        ...held.flatMap(({ id, name: called, place, fit }) => [
          `  ${fitWords[fit.kind]}: ${called}${placeText(place)}  (${id})`,
          ...fit.reasons.map((reason) => `    ${reason}`),
          ...(fit.unknown.length === 0 ? [] : [`    To find out: ${fit.unknown.join('; ')}`]),
          ...fit.care.map((care) => `    ${care}`),
        ]),
      ])

const fitWords = { fits: 'fits', 'may-fit': 'may fit', 'does-not-fit': 'does not fit' } as const
