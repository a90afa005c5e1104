import { problem, type Problem } from '../base/problem.ts'
import type { Blueprint } from '../blueprint/schema.ts'
import { coversToOpen } from './reach.ts'
import { unknownId } from './unknown.ts'
import { inSentence } from '../base/in-sentence.ts'
import { listText } from './words.ts'

/** A cover's name as it stands inside a sentence. */
export const coverName = (blueprint: Blueprint, cover: string): string =>
  inSentence(blueprint.covers.find((one) => one.id === cover)?.name ?? cover)

/** `Open it first`, or the covers that come off before it too. */
export const openFirst = (blueprint: Blueprint, cover: string, off: readonly string[]): string => {
  const open = coversToOpen(blueprint, cover, off)
  if (open.length <= 1) return 'Open it first'
  return `Open first, in this order: ${listText(open.map((one) => inSentence(one.name)))}`
}

/** What is wrong with work that needs covers off which are on. */
export const workCoveredProblems = (
  where: string,
  work: string,
  coversOff: readonly string[],
  blueprint: Blueprint,
  off: readonly string[],
): readonly Problem[] =>
  coversOff
    .filter((cover) => coversToOpen(blueprint, cover, off).length > 0)
    .map((cover) =>
      problem(
        'covered',
        where,
        `“${work}” needs the ${coverName(blueprint, cover)} off`,
        openFirst(blueprint, cover, off),
      ),
    )

/** What is wrong with opening this cover now. */
export const openingProblems = (cover: string, blueprint: Blueprint, off: readonly string[]): readonly Problem[] => {
  const known = blueprint.covers.find((one) => one.id === cover)
  if (known === undefined) return [unknownCover(cover, blueprint)]
  const name = coverName(blueprint, cover)
  if (off.includes(cover)) {
    return [
      problem('already-off', 'cover', `The ${name} is off already`, 'Nothing to note: go on with what is behind it'),
    ]
  }
  const before = coversToOpen(blueprint, cover, off).filter((one) => one.id !== cover)
  if (before.length === 0) return []
  const names = before.map((one) => inSentence(one.name))
  const mend = names.length === 1 ? `Open the ${names[0]} first` : `Open first, in this order: ${listText(names)}`
  return [problem('order-of-covers', 'cover', `The ${name} comes off after the ${listText(names)}`, mend)]
}

/** What is wrong with closing this cover now. */
export const closingProblems = (cover: string, blueprint: Blueprint, off: readonly string[]): readonly Problem[] => {
  if (!blueprint.covers.some((one) => one.id === cover)) return [unknownCover(cover, blueprint)]
  const name = coverName(blueprint, cover)
  if (!off.includes(cover)) {
    return [problem('not-off', 'cover', `The ${name} is not off`, offNow(blueprint, off))]
  }
  const inside = blueprint.covers.filter((one) => off.includes(one.id) && one.after.includes(cover))
  if (inside.length === 0) return []
  const names = listText(inside.map((one) => inSentence(one.name)))
  return [problem('order-of-covers', 'cover', `The ${names} goes back before the ${name}`, `Close the ${names} first`)]
}

const offNow = (blueprint: Blueprint, off: readonly string[]): string =>
  off.length === 0
    ? 'All covers are on'
    : `Off now: ${listText(off.map((id) => `${coverName(blueprint, id)} (${id})`))}`

const unknownCover = (cover: string, blueprint: Blueprint): Problem =>
  unknownId(
    'cover',
    'cover',
    cover,
    blueprint.covers.map((one) => one.id),
  )
