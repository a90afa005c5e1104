import { it } from 'vitest'
import { browserHere } from '../test/browser/chromium.ts'
import { postgresHere } from '../test/support/postgres.ts'
import { coverage, run as airVerdict } from './air-verdict.ts'
import { run as airflow } from './airflow-speed.ts'
import { run as belief } from './belief-speed.ts'
import { run as books } from './books-speed.ts'
import { run as buying } from './buying-speed.ts'
import { run as library } from './library-speed.ts'
import { run as load } from './load.ts'
import { run as machine } from './machine-speed.ts'
import { run as money } from './plan-money.ts'
import { run as network } from './network-speed.ts'
import { run as growth } from './plan-growth.ts'
import { run as reference } from './plan-reference.ts'
import { run as postgres } from './postgres-speed.ts'
import { run as rivals } from './plan-rivals.ts'
import { run as photoList } from './photo-list.ts'
import { run as plan } from './plan-speed.ts'
import { run as story } from './story-speed.ts'

/** One line a comparison: our time, the other's, and how many times as quick ours is. All in one process, one after the other. */
const figure = (value: number): string => (value >= 100 ? value.toFixed(0) : value.toPrecision(3))

it('prints each engine’s speed beside what it is compared with', async () => {
  for (const run of [
    network,
    airflow,
    airVerdict,
    belief,
    library,
    machine,
    plan,
    buying,
    story,
    ...(browserHere() ? [photoList] : []),
  ]) {
    for (const { name, ours, theirs, ratio } of await run()) {
      console.log(`${name}: ${figure(ours)} ms, compared with ${figure(theirs)} ms: ${figure(ratio)} ×`)
    }
  }
})

it('prints how often the bands of air figures hold the truth', { timeout: 1_800_000 }, () => {
  console.log(coverage(Number(process.env['PERF_RIGS'] ?? 2000)))
})

it('prints what following the plan brings on virtual machines', () => {
  for (const { name, ours, theirs, ratio } of money()) {
    console.log(`${name}: ${figure(ours)}, compared with ${figure(theirs)}: ${figure(ratio)} ×`)
  }
})

const print = (lines: readonly string[]): void => console.log(lines.join('\n'))

it('prints the bounds of the first plan of reference machines', () => {
  print(reference())
})

it('prints how the plan grows with the number of parts', () => {
  print(growth())
})

/** How many virtual machines each rival works on: `PERF_MACHINES=48 npm run perf` for more than usual. */
const machinesAsked = (): number | undefined => {
  const text = process.env['PERF_MACHINES']
  if (text === undefined) return undefined
  const count = Number(text)
  if (Number.isInteger(count) && count >= 2) return count
  throw new Error(`PERF_MACHINES is "${text}"; it would be a whole number, 2 or more`)
}

it('prints what the plan and simpler rules bring on the same virtual dead machines', { timeout: 7_200_000 }, () => {
  print(rivals(machinesAsked()))
})

it('prints how long lists and books take on large benches', { timeout: 7_200_000 }, async () => {
  print(await books(process.env['PERF_LARGE'] === '1' ? [1000, 10_000, 100_000] : [1000, 10_000]))
})

const seconds = (): number => Number(process.env['PERF_SECONDS'] ?? 60)

it.runIf(postgresHere())('prints how long lists and books take on PostgreSQL', { timeout: 7_200_000 }, async () => {
  print(await postgres(process.env['PERF_LARGE'] === '1' ? [1000, 10_000, 100_000] : [1000, 10_000]))
})

it.runIf(postgresHere())(
  'prints how a team fares with two programs on PostgreSQL',
  { timeout: 7_200_000 },
  async () => {
    print(await load(seconds()))
  },
)
