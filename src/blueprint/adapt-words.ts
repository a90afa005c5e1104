import type { Edit } from './adapt-edits.ts'
import type { Blueprint } from './schema.ts'

type Named = { readonly id: string; readonly name: string }

/** An edit in words, named by the blueprint that it was made on: `Thermal cut-out: not there`. Ids stand in for what is unknown. */
export const editText = (edit: Edit, blueprint: Blueprint | null): string => {
  const name = (items: readonly Named[] | undefined, id: string): string =>
    items?.find((item) => item.id === id)?.name ?? id
  const cover = (id: string): string => name(blueprint?.covers, id)
  switch (edit.kind) {
    case 'part-absent':
      return `${name(blueprint?.parts, edit.part)}: not there`
    case 'part-moved':
      return `${name(blueprint?.parts, edit.part)}: ${edit.behind === null ? 'behind no cover' : `behind “${cover(edit.behind)}”`}`
    case 'cover-fixings':
      return `${cover(edit.cover)}: ${fixingsText(edit)}`
    case 'cover-absent':
      return `${cover(edit.cover)}: no such cover`
    case 'renamed':
      return `${name(blueprint?.[`${edit.what}s`], edit.id)}: called “${edit.name}”`
    case 'check-how':
      return `${name(blueprint?.checks, edit.check)}: done in another way`
    case 'part-note':
      return `${name(blueprint?.parts, edit.part)}: note “${edit.text}”`
    case 'plate':
      return `Rating plate: ${plateText(edit)}`
    case 'fault-share':
      return `${name(blueprint?.faults, edit.fault)}: ${shareText(edit)}`
    case 'repair-cost': {
      const repair = blueprint?.repairs.find(({ id }) => id === edit.repair)
      return `${repair?.name ?? edit.repair}, ${name(repair?.options, edit.option)}: ${costText(edit)}`
    }
  }
}

const fixingsText = ({ fixings, openMin, closeMin }: Extract<Edit, { kind: 'cover-fixings' }>): string =>
  [
    ...(fixings === undefined
      ? []
      : [fixings.length === 0 ? 'no fixings' : fixings.map(({ count, kind }) => `${count} × ${kind}`).join(', ')]),
    ...(openMin === undefined ? [] : [`${openMin} min to open`]),
    ...(closeMin === undefined ? [] : [`${closeMin} min to close`]),
  ].join(', ')

const plateText = ({
  voltageV,
  frequencyHz,
  powerW,
  protectionClass,
  massKg,
}: Extract<Edit, { kind: 'plate' }>): string =>
  [
    ...(voltageV === undefined ? [] : [`${voltageV} V`]),
    ...(frequencyHz === undefined ? [] : [`${frequencyHz} Hz`]),
    ...(powerW === undefined ? [] : [`${powerW} W`]),
    ...(protectionClass === undefined ? [] : [`class ${protectionClass}`]),
    ...(massKg === undefined ? [] : [`${massKg} kg`]),
  ].join(', ')

const shareText = ({ perHundred, saleShareIfLeft }: Extract<Edit, { kind: 'fault-share' }>): string =>
  [
    ...(perHundred === undefined ? [] : [`${perHundred} in a hundred`]),
    ...(saleShareIfLeft === undefined ? [] : [`${Math.round(saleShareIfLeft * 100)} % of the price if left in`]),
  ].join(', ')

const costText = ({ costMinor, minutes }: Extract<Edit, { kind: 'repair-cost' }>): string => {
  const money = (minor: number): string => (minor / 100).toFixed(2)
  return [
    ...(costMinor === undefined ? [] : [`costs ${money(costMinor.low)} to ${money(costMinor.high)}`]),
    ...(minutes === undefined ? [] : [`${minutes} min`]),
  ].join(', ')
}
