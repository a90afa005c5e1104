import type { Blueprint, Check } from '../../blueprint/schema.ts'

/** Covers that must be off for a check: its own and those its probe points are behind. */
export const coversFor = (blueprint: Blueprint, check: Check): string[] => {
  const points = check.kind === 'meter' ? [check.red, check.black] : []
  const behind = points.flatMap((id) => blueprint.points.find((point) => point.id === id)?.behind ?? [])
  return [...new Set([...check.coversOff, ...behind])]
}
