import type { Blueprint, Cover } from '../../blueprint/schema.ts'
import type { CoverStep } from '../../machine/view.ts'

/** Covers to take off, in order, so that all the wanted ones are off: those that come off before them first. */
export const coversToOpen = (
  blueprint: Blueprint,
  off: readonly string[],
  wanted: readonly string[],
): readonly CoverStep[] => {
  const order: Cover[] = []
  const visit = (id: string): void => {
    const cover = blueprint.covers.find((one) => one.id === id)
    if (cover === undefined || off.includes(id) || order.includes(cover)) return
    cover.after.forEach(visit)
    order.push(cover)
  }
  wanted.forEach(visit)
  return order.map((cover) => step(cover, cover.openMin))
}

/** Covers to put back, in order: the last that came off goes on first. */
export const coversToClose = (blueprint: Blueprint, off: readonly string[]): readonly CoverStep[] =>
  [...coversToOpen(blueprint, [], off)]
    .reverse()
    .flatMap(({ id }) => blueprint.covers.filter((cover) => cover.id === id))
    .map((cover) => step(cover, cover.closeMin))

const step = (cover: Cover, minutes: number): CoverStep => ({
  id: cover.id,
  name: cover.name,
  minutes,
  fixings: cover.fixings.map(({ count, kind }) => `${count} × ${kind}`).join(', '),
  hint: cover.hint ?? null,
})
