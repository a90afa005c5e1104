import { inSentence } from '../base/in-sentence.ts'
import type { Blueprint, Check } from '../blueprint/schema.ts'
import { tellsApart, type TellsApart } from './fault-sight.ts'
import { coversFor } from './planning/covers-for.ts'

/** Faults that no check made from outside tells apart, and what does tell them or mends them all. */
export type LookAlikes = {
  /** Ids of the faults, in the order of the blueprint. */
  readonly faults: readonly string[]
  /** Ids of the repairs that remove every one of them: then nothing needs to be told. */
  readonly sameRepairs: readonly string[]
  /** Checks under covers that tell some or all of them apart; none when the repair is the same. */
  readonly toldBy: readonly { readonly check: string; readonly covers: readonly string[] }[]
  /** Those that no check tells apart at all, each group with the repairs that remove it whole; none when the repair is the same. */
  readonly untold: readonly { readonly faults: readonly string[]; readonly repairs: readonly string[] }[]
  /** The faults by name, and what to do about it, in words. */
  readonly names: string
  readonly mend: string
  /** The whole in one: `These look alike from outside: A; B. The repair is the same: C.` */
  readonly text: string
}

/**
 * Groups of faults that look alike as long as every cover is on: by the readings of a budget multimeter and by the tables of
 * looks, air and run checks, each fault alone. Each fault stands in the first group all of whose members it looks like.
 */
export const lookAlikes = (blueprint: Blueprint): readonly LookAlikes[] => {
  const apart = tellsApart(blueprint)
  const isOutside = (check: Check): boolean => coversFor(blueprint, check).length === 0
  const outside = blueprint.checks.filter(isOutside)
  const inside = blueprint.checks.filter((check) => !isOutside(check))
  const all = blueprint.faults.map((_, fault) => fault)
  return grouped(all, outside, apart).map((group) => groupOf(blueprint, group, inside, apart))
}

/** Groups of two and more that none of the checks tells apart. */
const grouped = (
  faults: readonly number[],
  checks: readonly Check[],
  apart: TellsApart,
): readonly (readonly number[])[] => {
  const groups: number[][] = []
  for (const fault of faults) {
    const alike = groups.find((group) => group.every((other) => !checks.some((check) => apart(check, other, fault))))
    if (alike === undefined) groups.push([fault])
    else alike.push(fault)
  }
  return groups.filter((group) => group.length > 1)
}

const groupOf = (
  blueprint: Blueprint,
  group: readonly number[],
  inside: readonly Check[],
  apart: TellsApart,
): LookAlikes => {
  const ids = (faults: readonly number[]): readonly string[] => faults.map((fault) => blueprint.faults[fault].id)
  const sameRepairs = repairsOfAll(blueprint, ids(group))
  const isOneRepair = sameRepairs.length > 0
  const toldBy = isOneRepair ? [] : tellingChecks(group, inside, apart)
  const untold = isOneRepair ? [] : grouped(group, inside, apart).map(ids)
  const found = {
    faults: ids(group),
    sameRepairs,
    toldBy: toldBy.map((check) => ({ check: check.id, covers: coversFor(blueprint, check) })),
    untold: untold.map((faults) => ({ faults, repairs: repairsOfAll(blueprint, faults) })),
  }
  const names = namesIn(blueprint.faults, found.faults).join('; ')
  const mend = mendText(blueprint, found)
  return { ...found, names, mend, text: `These look alike from outside: ${names}. ${mend}` }
}

const repairsOfAll = (blueprint: Blueprint, faults: readonly string[]): readonly string[] =>
  blueprint.repairs.filter(({ removes }) => faults.every((fault) => removes.includes(fault))).map(({ id }) => id)

/**
 * Few checks that together tell all that can be told, those that tell for certain first: each next one is the one that tells
 * most of what is left.
 */
const tellingChecks = (group: readonly number[], checks: readonly Check[], apart: TellsApart): readonly Check[] => {
  let left = group.flatMap((one, at) => group.slice(at + 1).map((other) => [one, other] as const))
  const chosen: Check[] = []
  for (const surely of [true, false]) {
    for (;;) {
      const ranked = checks
        .map((check) => ({ check, told: left.filter(([one, other]) => apart(check, one, other, surely)).length }))
        .toSorted((a, b) => b.told - a.told || a.check.minutes - b.check.minutes)
      const [best] = ranked
      if (best === undefined || best.told === 0) break
      chosen.push(best.check)
      left = left.filter(([one, other]) => !apart(best.check, one, other, surely))
    }
  }
  return [...new Set(chosen)]
}

const namesIn = (items: readonly { id: string; name: string }[], wanted: readonly string[]): readonly string[] =>
  wanted.map((id) => items.find((item) => item.id === id)?.name ?? id)

type Found = Pick<LookAlikes, 'faults' | 'sameRepairs' | 'toldBy' | 'untold'>

/** Either that the repair is the same, or what to open and which check tells, and what nothing tells. */
const mendText = (blueprint: Blueprint, { sameRepairs, toldBy, untold }: Found): string => {
  const repairs = (ids: readonly string[]): string => namesIn(blueprint.repairs, ids).join(', or ')
  if (sameRepairs.length > 0) return `The repair is the same: ${repairs(sameRepairs)}.`
  const told = toldBy.map(({ check, covers }) => {
    const open = namesIn(blueprint.covers, covers).map(inSentence)
    return `To tell, open the ${open.join(' and the ')}: ${namesIn(blueprint.checks, [check]).join('')}.`
  })
  const left = untold.map(({ faults, repairs: same }) => {
    const mend = same.length > 0 ? `the repair is the same: ${repairs(same)}` : 'no one repair removes them all'
    return `No check tells these apart: ${namesIn(blueprint.faults, faults).join('; ')}; ${mend}.`
  })
  return [...told, ...left].join(' ')
}
