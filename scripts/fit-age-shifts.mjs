// Fits how the mix of faults shifts with the age of a machine, from the open repair records:
//   node scripts/fit-age-shifts.mjs FILE.csv
// Prints the rows of the table in src/facts/age-and-wear.ts. The records themselves stay where they are.
import { readFileSync } from 'node:fs'
import { ensureBuilt } from './ensure-built.mjs'

const file = process.argv[2]
if (file === undefined) throw new Error('Name the file of records: columns corded, fault_type, age')
await ensureBuilt()
const { shrunkRatios } = await import('../dist/engines/belief/index.js')
const { ageBandOf, ageBands, labelsOfFaultTypes } = await import('../dist/facts/age-and-wear.js')

const [heading, ...lines] = readFileSync(file, 'utf8').trim().split(/\r?\n/)
const columns = heading.split(',')
const records = lines.map((line) => Object.fromEntries(line.split(',').map((field, i) => [columns[i], field])))
const types = Object.entries(labelsOfFaultTypes)
const counts = types.map(() => ageBands.map(() => 0))
for (const { corded, fault_type: label, age } of records) {
  const row = types.findIndex(([, name]) => name === label)
  if (corded === 'true' && age !== '' && row >= 0) counts[row][ageBandOf(Number(age))] += 1
}
const ratios = shrunkRatios(counts)
const figures = (list) => `[${list.map((value) => value.toFixed(3)).join(', ')}]`
types.forEach(([id], row) => {
  const [middle, low, high] = ['ratio', 'low', 'high'].map((key) => figures(ratios[row].map((cell) => cell[key])))
  console.log(`  shift('${id}', [${counts[row].join(', ')}], ${middle}, ${low}, ${high}),`)
})
console.log(`Records by band: ${ageBands.map((_, b) => counts.reduce((sum, row) => sum + row[b], 0)).join(', ')}`)
