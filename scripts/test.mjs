// npm test: sets everything up, then runs every check and test. Stops at the first kind that fails.
import { spawnSync } from 'node:child_process'
import { join } from 'node:path'
import { fileURLToPath } from 'node:url'
import { ensureBuilt, ensureInstalled } from './ensure-built.mjs'

const root = fileURLToPath(new URL('..', import.meta.url))
const bin = (name) => join(root, 'node_modules', name)

const steps = [
  ['formatting', bin('prettier/bin/prettier.cjs'), ['--check', '--log-level', 'warn', '.']],
  ['types', bin('typescript/bin/tsc'), ['--noEmit', '-p', '.']],
  ['lint', bin('eslint/bin/eslint.js'), ['.', '--max-warnings', '0']],
  ['layers', bin('dependency-cruiser/bin/dependency-cruise.mjs'), ['src', '--config', '.dependency-cruiser.mjs']],
  ['unused code', bin('knip/bin/knip.js'), []],
  ['tests', bin('vitest/vitest.mjs'), ['run', ...process.argv.slice(2)]],
]

ensureInstalled()
await ensureBuilt()
for (const [name, script, args] of steps) {
  console.log(`\n== ${name}`)
  const { status } = spawnSync(process.execPath, [script, ...args], {
    cwd: root,
    stdio: 'inherit',
    env: { ...process.env, TZ: 'UTC', LANG: 'C.UTF-8' },
  })
  if (status !== 0) {
    console.error(`\n${name}: failed`)
    process.exit(status ?? 1)
  }
}
