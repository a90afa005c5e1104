import type { BenchStores, LogWrite } from '../ports.ts'

/**
 * The stores of a bench, with every note and entry signed by who writes it: `writer` is asked at the moment of writing and gives null where
 * nobody has a name. Whatever stood in `by` before is overwritten, so nobody can sign for another.
 */
export const signedStores = (stores: BenchStores, writer: () => string | null): BenchStores => {
  const sign = <One extends { readonly by?: string | undefined }>(ones: readonly One[]): readonly One[] => {
    const by = writer()
    return ones.map(({ by: _dropped, ...one }) => ({ ...one, ...(by === null ? {} : { by }) }) as unknown as One)
  }
  const signWrite = (write: LogWrite): LogWrite =>
    write.kind === 'machine' ? { ...write, entries: sign(write.entries) } : { ...write, entries: sign(write.entries) }
  const { notes, logs } = stores
  return {
    ...stores,
    notes: {
      ...notes,
      add: (bench, machine, all) => notes.add(bench, machine, sign(all)),
      append: (machine, expected, all) => notes.append(machine, expected, sign(all)),
    },
    logs: { ...logs, write: (bench, writes) => logs.write(bench, writes.map(signWrite)) },
  }
}
