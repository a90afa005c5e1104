import type { BenchId } from '../../bench/contract.ts'
import type { AppendOutcome, LogStore, LogWrite, WriteOutcome } from '../../bench/ports.ts'
import { appendTo, othersOf, startLog, type MemoryLogs } from './logs.ts'

/** The port of the other logs in memory. */
export const memoryLogStore = (logs: MemoryLogs): LogStore => ({
  entries: (kind, id) => Promise.resolve(othersOf(logs, kind).get(id)?.entries ?? []),
  list: (bench, kind) =>
    Promise.resolve(
      [...othersOf(logs, kind).values()].filter((log) => log.bench === bench).map(({ entries }) => entries),
    ),
  write: (bench, writes) => Promise.resolve(writeAll(logs, bench, writes)),
})

/** Writes one after the other and takes all back when one is in the way. */
const writeAll = (logs: MemoryLogs, bench: BenchId, writes: readonly LogWrite[]): WriteOutcome => {
  const before = copyOf(logs)
  for (const [at, write] of writes.entries()) {
    const outcome = writeOne(logs, bench, write)
    if (outcome.kind === 'appended') continue
    restore(logs, before)
    return outcome.kind === 'not-kept' ? outcome : { ...outcome, at }
  }
  return { kind: 'appended' }
}

const writeOne = (logs: MemoryLogs, bench: BenchId, write: LogWrite): AppendOutcome => {
  if (write.kind === 'machine') {
    return write.expectedVersion === 0
      ? startLog(logs.machines, bench, write.id, write.entries)
      : appendTo(logs.machines, write.id, write.expectedVersion, write.entries)
  }
  const others = othersOf(logs, write.kind)
  return write.expectedVersion === 0
    ? startLog(others, bench, write.id, write.entries)
    : appendTo(others, write.id, write.expectedVersion, write.entries)
}

const copyOf = (logs: MemoryLogs): MemoryLogs => ({
  machines: new Map(logs.machines),
  others: new Map([...logs.others].map(([kind, of]) => [kind, new Map(of)])),
})

const restore = (logs: MemoryLogs, before: MemoryLogs): void => {
  logs.machines.clear()
  for (const [id, log] of before.machines) logs.machines.set(id, log)
  logs.others.clear()
  for (const [kind, of] of before.others) logs.others.set(kind, of)
}
