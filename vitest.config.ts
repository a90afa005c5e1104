import { defineConfig } from 'vitest/config'
import { SlowestFirst } from './test/support/slowest-first.ts'

export default defineConfig({
  test: {
    include: ['test/**/*.test.{ts,tsx}'],
    testTimeout: 60_000,
    hookTimeout: 120_000,
    maxWorkers: 2,
    // To ask a page costs some 20 ms of a processor: not at every 50 ms, as is usual.
    expect: { poll: { interval: 100 } },
    // The modules of the program hold no state, so one worker reads them once and not anew for each file. A test that changes
    // something they all share, such as the clock, puts it back.
    isolate: false,
    sequence: { sequencer: SlowestFirst },
  },
})
