/** Rows fetched together: few enough that a large bench never stands in memory as a whole. */
const atOnce = 100

/** Rows by rank, a stretch at a time. */
export async function* stretches<Row extends { readonly rank: number }>(
  next: (after: number, limit: number) => Promise<readonly Row[]>,
): AsyncGenerator<readonly Row[]> {
  let after = 0
  for (;;) {
    const rows = await next(after, atOnce)
    const last = rows.at(-1)
    if (last === undefined) return
    yield rows
    after = last.rank
  }
}
