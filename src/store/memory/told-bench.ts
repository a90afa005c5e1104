import type { BenchId } from '../../bench/contract.ts'
import type { BenchStores, Changes, LogWrite } from '../../bench/ports.ts'
import { makeListeners, mostByName } from '../changes.ts'

type Log = Pick<LogWrite, 'kind' | 'id'>

/** The stores of one bench that nobody else writes to, and what tells of each writing to them. */
export const toldBench = (
  stores: BenchStores,
  bench: BenchId,
): { readonly stores: BenchStores; readonly changes: Changes } => {
  const listeners = makeListeners()
  const versionOf = async ({ kind, id }: Log): Promise<number> =>
    (await (kind === 'machine' ? stores.notes.notes(id) : stores.logs.entries(kind, id))).length
  const tell = async (written: readonly Log[]): Promise<void> => {
    if (!listeners.someone()) return
    if (written.length > mostByName) return listeners.tellAll()
    for (const { kind, id } of written) listeners.tell(bench, { kind, id, version: await versionOf({ kind, id }) })
  }
  const told = async <Outcome extends { readonly kind: string }>(
    written: readonly Log[],
    outcome: Promise<Outcome>,
  ): Promise<Outcome> => {
    const done = await outcome
    if (done.kind === 'appended') await tell(written)
    return done
  }
  const { notes, logs } = stores
  return {
    changes: listeners,
    stores: {
      ...stores,
      notes: {
        ...notes,
        add: (on, id, all) => told([{ kind: 'machine', id }], notes.add(on, id, all)),
        append: (id, version, all) => told([{ kind: 'machine', id }], notes.append(id, version, all)),
      },
      logs: { ...logs, write: (on, writes) => told(writes, logs.write(on, writes)) },
    },
  }
}
