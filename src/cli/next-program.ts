import type { Command } from 'commander'
import { moneyText } from '../base/money.ts'
import type { CommandDeps } from '../bench/commands.ts'
import type { MachineState } from '../bench/contract.ts'
import { benchOrder, hourOffer, type HourOffer } from '../bench/next-hour.ts'
import { documentOf } from '../bench/queries.ts'
import type { MachineView } from '../machine/view.ts'
import { jobOfDocument } from './bench-commands.ts'
import { show, type Shell } from './output.ts'
import { withBench } from './with-bench.ts'

/** `thrum next`: the machines in hand in the order of the Bench page, with the next move of each. */
export const addNextCommand = (program: Command, shell: Shell): void => {
  program
    .command('next')
    .description('what to do with the next hour: the machines in hand, best first, and what is ready to go')
    .action(
      withBench(shell, async ({ deps }, options) => {
        const list = ordered(await inHand(shell, deps))
        return show(shell.output, options.json, jsonOf(list), () => linesOf(list))
      }),
    )
}

type InHand = { readonly state: MachineState; readonly view: MachineView | null; readonly offer: HourOffer | null }
type Ordered = {
  readonly carryOn: readonly InHand[]
  readonly ready: readonly InHand[]
  readonly unknown: readonly InHand[]
}

/** The one that came in last first; no view where the blueprint is not known here. */
const inHand = async ({ viewOf }: Shell, deps: CommandDeps): Promise<readonly InHand[]> => {
  const logs = await deps.store.list(deps.bench)
  const documents = await Promise.all(logs.map((notes) => documentOf(notes, deps.blueprintById)))
  const standing = documents.filter(({ state }) => state.left === null).reverse()
  return Promise.all(
    standing.map(async (document) => {
      const job = await jobOfDocument(deps, document)
      const view = job.kind === 'ok' ? viewOf(job.value) : null
      return { state: document.state, view, offer: view === null ? null : hourOffer(view) }
    }),
  )
}

const ordered = (machines: readonly InHand[]): Ordered => {
  const order = benchOrder(machines.map(({ state: { id, currency }, offer }) => ({ id, currency, offer })))
  const of = (ids: readonly string[]) => ids.flatMap((id) => machines.filter(({ state }) => state.id === id))
  return { carryOn: of(order.carryOn), ready: of(order.ready), unknown: of(order.unknown) }
}

const jsonOf = ({ carryOn, ready, unknown }: Ordered) => ({
  carryOn: carryOn.map(entryOf),
  ready: ready.map(entryOf),
  unknown: unknown.map(entryOf),
})

const entryOf = ({ state: { id, name, currency, version }, view, offer }: InHand) => ({
  id,
  name,
  version,
  currency,
  ...(view === null || offer === null
    ? {}
    : {
        next: { kind: view.next.kind, id: view.next.id, name: view.next.name, minutes: view.next.minutes },
        asItStandsMinor: view.worth.asItStandsMinor,
        carryOnMinor: view.worth.carryOnMinor,
        expectedMin: view.worth.expectedMin,
        ...offer,
      }),
})

const linesOf = ({ carryOn, ready, unknown }: Ordered): readonly string[] => [
  ...(carryOn.length + ready.length + unknown.length === 0 ? ['Nothing in hand.'] : []),
  ...section('For the next hour, best first:', carryOn),
  ...section('Ready to go:', ready),
  ...section('Blueprint not known here:', unknown),
]

const section = (heading: string, machines: readonly InHand[]): readonly string[] =>
  machines.length === 0 ? [] : [heading, ...machines.map(line)]

const line = ({ state, view, offer }: InHand): string => {
  const money = (minor: number): string => moneyText(minor, state.currency)
  if (view === null || offer === null) return `  ${state.name}  (${state.id})`
  return offer.kind === 'ready'
    ? `  ${state.name}: ${view.next.name}, ${money(offer.expectedMinor)}  (${state.id})`
    : `  ${state.name}: ${view.next.name}, ${Math.round(view.next.minutes)} min; an hour brings ${money(offer.minorPerHour)}  (${state.id})`
}
