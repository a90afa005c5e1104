/** The parts of a problem that say which suspect is left after a repair. */
type FaultSets = {
  readonly suspects: readonly { readonly faults: readonly string[] }[]
  readonly repairs: readonly { readonly removes: readonly string[] }[]
}

/** A fault set that a repair would leave and that no suspect stands for. */
type MissingSuspect = { readonly suspect: number; readonly repair: number; readonly left: readonly string[] }

type AfterRepair = {
  /** For each repair, for each suspect: the index of the suspect left when the repair works; its own index when nothing changes. */
  readonly after: readonly Int32Array[]
  readonly missing: readonly MissingSuspect[]
}

/** One text per set of faults, whatever the order they are written in. */
export const faultKey = (faults: readonly string[]): string =>
  faults.length === 0 ? '' : JSON.stringify(faults.length === 1 ? faults : [...faults].sort())

/** What each repair makes of each suspect. A suspect that is missing is reported and its index is -1. */
export const suspectsAfterRepair = (sets: FaultSets): AfterRepair => {
  const byKey = new Map(sets.suspects.map((suspect, index) => [faultKey(suspect.faults), index]))
  const having = suspectsByFault(sets)
  const missing: MissingSuspect[] = []
  const unchanged = Int32Array.from(sets.suspects.keys())
  const after = sets.repairs.map((repair, repairIndex) => {
    const row = unchanged.slice()
    const removes = new Set(repair.removes)
    for (const index of new Set(repair.removes.flatMap((fault) => having.get(fault) ?? []))) {
      const left = (sets.suspects[index]?.faults ?? []).filter((fault) => !removes.has(fault))
      row[index] = byKey.get(faultKey(left)) ?? -1
      if (row[index] === -1) missing.push({ suspect: index, repair: repairIndex, left })
    }
    return row
  })
  return { after, missing }
}

const suspectsByFault = (sets: FaultSets): ReadonlyMap<string, readonly number[]> => {
  const having = new Map<string, number[]>()
  sets.suspects.forEach((suspect, index) => {
    for (const fault of suspect.faults) {
      const list = having.get(fault)
      if (list === undefined) having.set(fault, [index])
      else list.push(index)
    }
  })
  return having
}
