import { it } from 'vitest'
import { run as belief } from './belief-speed.ts'
import { run as library } from './library-speed.ts'
import { run as machine } from './machine-speed.ts'
import { run as money } from './plan-money.ts'
import { run as network } from './network-speed.ts'
import { run as rivals } from './plan-rivals.ts'
import { run as plan } from './plan-speed.ts'

/** One line a comparison: our time, the other's, and how many times as quick ours is. All in one process, one after the other. */
const figure = (value: number): string => (value >= 100 ? value.toFixed(0) : value.toPrecision(3))

it('prints each engine’s speed beside what it is compared with', async () => {
  for (const run of [network, belief, library, machine, plan]) {
    for (const { name, ours, theirs, ratio } of await run()) {
      console.log(`${name}: ${figure(ours)} ms, compared with ${figure(theirs)} ms: ${figure(ratio)} ×`)
    }
  }
})

it('prints what following the plan brings on virtual machines', () => {
  for (const { name, ours, theirs, ratio } of money()) {
    console.log(`${name}: ${figure(ours)}, compared with ${figure(theirs)}: ${figure(ratio)} ×`)
  }
})

it('prints what the plan and simpler rules bring on the same virtual dead machines', { timeout: 1_200_000 }, () => {
  for (const line of rivals()) console.log(line)
})
