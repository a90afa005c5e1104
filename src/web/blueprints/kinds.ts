import { plateText, plugText, type BlueprintEntry } from '../../blueprint/entry.ts'
import { sameSigns } from '../../blueprint/narrow.ts'

/** Entries that look alike from outside, and differ by what their rating plates or names say. */
export type Kind = {
  readonly name: string
  readonly entries: readonly BlueprintEntry[]
  /** What tells each entry from the others of its kind, in the order of the entries. */
  readonly labels: readonly string[]
}

/** The entries by how they look, in the order in which each kind is first met. */
export const kindsOf = (entries: readonly BlueprintEntry[]): readonly Kind[] => {
  const kinds = new Map<string, BlueprintEntry[]>()
  for (const entry of entries) {
    const looks = `${sameSigns(entry.signs)} ${entry.features.join(' ')}`
    kinds.set(looks, [...(kinds.get(looks) ?? []), entry])
  }
  return [...kinds.values()].map(asKind)
}

const asKind = (entries: readonly BlueprintEntry[]): Kind => {
  const name = mostUsual(entries.map((entry) => entry.name))
  return { name, entries, labels: entries.map((entry) => labelOf(entry, entries, name)) }
}

/** The plate; the plug, the name and at last the id only where what stands before them does not tell. */
const labelOf = (entry: BlueprintEntry, entries: readonly BlueprintEntry[], name: string): string => {
  const plate = plateText(entry.plate)
  const samePlate = entries.filter((other) => plateText(other.plate) === plate)
  const plug = new Set(samePlate.map(({ plugFuse }) => plugFuse)).size > 1 ? `, ${plugText(entry)}` : ''
  const own = entry.name === name ? '' : `: ${entry.name}`
  const alike = samePlate.filter((other) => other.plugFuse === entry.plugFuse && other.name === entry.name)
  return `${plate}${plug}${own}${alike.length > 1 ? ` (${entry.id})` : ''}`
}

const mostUsual = (names: readonly string[]): string => {
  const count = (name: string): number => names.filter((other) => other === name).length
  return names.reduce((best, name) => (count(name) > count(best) ? name : best))
}
