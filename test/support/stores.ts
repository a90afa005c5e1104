import type { BenchStores } from '../../src/bench/ports.ts'
import { memoryBench } from '../../src/store/memory/bench.ts'

/** What commands and queries need of a bench's stores; one in memory when none is given. */
export const storesOf = ({ notes, logs, books }: BenchStores = memoryBench()) => ({ store: notes, logs, books })
