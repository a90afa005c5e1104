#!/usr/bin/env node
import { ensureBuilt } from '../scripts/ensure-built.mjs'

await ensureBuilt()
const { main } = await import('../dist/cli/main.js')
process.exitCode = await main(process.argv.slice(2))
