// npm start: sets everything up, then serves the program on this machine.
import { ensureBuilt } from './ensure-built.mjs'

await ensureBuilt()
const { main } = await import('../dist/cli/main.js')
process.exitCode = await main(['serve', ...process.argv.slice(2)])
