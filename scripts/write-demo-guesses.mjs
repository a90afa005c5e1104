// Writes what the program guesses of the adverts of the demonstration's year: src/bench/demo/guesses.ts.
import { readFileSync, writeFileSync } from 'node:fs'
import { format, resolveConfig } from 'prettier'
import { ensureBuilt } from './ensure-built.mjs'

await ensureBuilt()
const { guessesOfYear } = await import('../dist/bench/demo/guesses-of-year.js')
const { blueprintById } = await import('../dist/blueprint/library.js')
const file = new URL('../src/bench/demo/guesses.ts', import.meta.url)
const head = readFileSync(file, 'utf8').split(' = {')[0]
const text = `${head} = ${JSON.stringify(await guessesOfYear(blueprintById))}`
writeFileSync(file, await format(text, { ...(await resolveConfig(file)), parser: 'typescript' }))
