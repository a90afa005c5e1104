import { defineConfig } from 'vitest/config'

export default defineConfig({ test: { include: ['perf/all.perf.ts'], testTimeout: 600_000, maxWorkers: 1 } })
