import { useQueries } from '@tanstack/react-query'
import type { BenchId, MachineState } from '../../bench/contract.ts'
import { hourOffer, type HourOffer } from '../../bench/next-hour.ts'
import type { MachineView } from '../../machine/view.ts'
import { blueprintQuery } from '../blueprint-query.ts'
import { machineQuery, useJobSettings } from '../queries.ts'
import { useMarkets } from '../use-market.ts'
import { partsFor, useOpenParts } from '../use-shelf.ts'
import { viewQuery } from '../use-machine-view.ts'

/** A machine in hand with its view and what it offers for the next hour, as far as they are worked out. */
export type BenchRow = {
  readonly machine: MachineState
  readonly view: MachineView | null
  readonly offer: HourOffer | null
  readonly failure: string | null
  /** There is nothing more to wait for. */
  readonly done: boolean
}

/** The views of all these machines, worked out one after the other. */
export const useBenchViews = (bench: BenchId, machines: readonly MachineState[]): readonly BenchRow[] => {
  const documents = useQueries({ queries: machines.map(({ id }) => machineQuery(bench, id)) })
  const ids = [...new Set(machines.map(({ blueprint }) => blueprint))]
  const blueprints = useQueries({ queries: ids.map(blueprintQuery) })
  const settings = useJobSettings()
  const marketOf = useMarkets(bench, machines)
  const parts = useOpenParts(bench)
  const blueprintOf = (id: string) => blueprints[ids.indexOf(id)]
  const views = useQueries({
    queries: machines.map((machine, i) => {
      const blueprint = blueprintOf(machine.blueprint).data
      const shelf = partsFor(parts, machine, blueprint)
      return viewQuery(documents[i].data, blueprint, settings, marketOf(machine), shelf)
    }),
  })
  return machines.map((machine, i) => {
    const view = views[i].data ?? null
    const error = documents[i].error ?? blueprintOf(machine.blueprint).error ?? views[i].error
    return {
      machine,
      view,
      offer: view === null ? null : hourOffer(view),
      failure: error?.message ?? null,
      done: error !== null || (view !== null && !documents[i].isFetching),
    }
  })
}
