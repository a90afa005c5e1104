// npm test: sets everything up, then runs every check and test. Stops at the first kind that fails.
import { Buffer } from 'node:buffer'
import { spawn } from 'node:child_process'
import { join } from 'node:path'
import { fileURLToPath } from 'node:url'
import { ensureBuilt, ensureInstalled } from './ensure-built.mjs'

const root = fileURLToPath(new URL('..', import.meta.url))
const bin = (name) => join(root, 'node_modules', name)

// Each check keeps one core busy, the tests keep all: so the checks go two at a time, then the tests.
const checks = [
  ['lint', bin('eslint/bin/eslint.js'), ['.', '--max-warnings', '0']],
  ['types', bin('typescript/bin/tsc'), ['--noEmit', '-p', '.']],
  ['formatting', bin('prettier/bin/prettier.cjs'), ['--check', '--log-level', 'warn', '.']],
  ['layers', bin('dependency-cruiser/bin/dependency-cruise.mjs'), ['src', '--config', '.dependency-cruiser.mjs']],
  ['unused code', bin('knip/bin/knip.js'), []],
]
const tests = ['tests', bin('vitest/vitest.mjs'), ['run', ...process.argv.slice(2)]]

const env = { ...process.env, TZ: 'UTC', LANG: 'C.UTF-8' }

/** Runs a check to its end; its words are shown whole, after it. */
const check = ([name, script, args]) =>
  new Promise((done) => {
    const said = []
    const child = spawn(process.execPath, [script, ...args], { cwd: root, env, stdio: ['ignore', 'pipe', 'pipe'] })
    for (const stream of [child.stdout, child.stderr]) stream.on('data', (bytes) => said.push(bytes))
    child.on('close', (status) => {
      console.log(`\n== ${name}\n${Buffer.concat(said).toString()}`)
      done(status === 0 ? [] : [name])
    })
  })

const takeTurns = async (waiting) => {
  const failed = []
  for (let next = waiting.shift(); next !== undefined; next = waiting.shift()) failed.push(...(await check(next)))
  return failed
}

const stopAt = (failed) => {
  if (failed.length === 0) return
  console.error(`\n${failed.join(', ')}: failed`)
  process.exit(1)
}

ensureInstalled()
await ensureBuilt()
const waiting = [...checks]
stopAt((await Promise.all([takeTurns(waiting), takeTurns(waiting)])).flat())

console.log('\n== tests')
const [name, script, args] = tests
const run = spawn(process.execPath, [script, ...args], { cwd: root, env, stdio: 'inherit' })
run.on('close', (status) => stopAt(status === 0 ? [] : [name]))
