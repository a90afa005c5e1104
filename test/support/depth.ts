/**
 * How deep random tests go. Usually 1, which a change at hand can wait for; `THRUM_TEST_DEPTH=4 npm test` makes four times as many
 * random cases, and what is left out of the usual run.
 */
export const depth = Number(process.env['THRUM_TEST_DEPTH'] ?? 1)

/** So many random cases, at the depth asked for. */
export const times = (usual: number): number => Math.max(1, Math.round(usual * depth))
