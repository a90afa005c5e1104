import { exitCosts } from '../../facts/trade.ts'
import type { z } from 'zod'
import type { findingSchema } from '../../machine/proof/finding.ts'
import { gateStates, isFirstRun, runningBarred } from '../../machine/running.ts'
import { between, toStep } from './draws.ts'
import { closeAll, daysLater, isSound, jobNow, makeCheck, write, type Hand, type Piece } from './hand.ts'

/** How often a check that waits for passing is made before it is given up. */
const mostTries = 3

/** How it was shown to work. */
export type Shown = 'at-once' | 'at-last' | 'not'

/** Makes every check that stands before running, then runs it for as long as it takes to show that it works. */
export function* showWorking(hand: Hand): Piece<Shown> {
  const { checks } = hand.lot.blueprint
  for (const gate of checks.filter((check) => check.beforeRunning || isFirstRun(check))) {
    for (let tries = 0; gateStates(jobNow(hand)).get(gate.id) !== 'passed'; tries++) {
      if (tries === mostTries) return 'not'
      if (isFirstRun(gate) && runningBarred(jobNow(hand)).length > 0) return 'not'
      yield* makeCheck(hand, gate)
    }
  }
  yield* closeAll(hand)
  const proofs = checks.filter((check) => check.kind !== 'meter' && check.provesWorking)
  for (let tries = 0; tries < mostTries; tries++) {
    const proof = proofs[0]
    if (proof === undefined) return 'not'
    if (isSound(proof, yield* makeCheck(hand, proof))) return tries === 0 ? 'at-once' : 'at-last'
  }
  return 'not'
}

/** Cleaned, with new bag and filters. */
export function* clean(hand: Hand): Piece {
  const { cleanMin, materialsMinor } = exitCosts.sellWorking
  daysLater(hand, between(hand.random, 0.5, 3))
  yield* write(hand, {
    kind: 'spent',
    costMinor: toStep(materialsMinor * between(hand.random, 0.5, 1.2), 5),
    minutes: Math.round(cleanMin * between(hand.random, 0.6, 1.3)),
    text: 'Cleaned, new bag and filters',
  })
}

/** The checks after repair of a class II machine, with what a sound one shows. */
export function* proveSafe(hand: Hand): Piece {
  const { random } = hand
  const finding = (found: FindingInput): Piece => write(hand, { kind: 'proof', minutes: 3, finding: found })
  yield* write(hand, { kind: 'rules', rules: { region: 'UK', profile: 'uk-cop-5.v1' } })
  yield* finding({ kind: 'look', step: 'visual', good: true })
  yield* finding(measured('insulation', toStep(between(random, 60e6, 180e6), 1e6), 'insulation-tester', 500))
  yield* finding(measured('touch-current', toStep(between(random, 4, 15), 1) * 1e-5, 'leakage-tester', null))
  yield* finding({ kind: 'look', step: 'polarity', good: true })
  yield* finding({ kind: 'look', step: 'run', good: true })
}

type FindingInput = z.input<typeof findingSchema>

const measured = (
  quantity: 'insulation' | 'touch-current',
  value: number,
  instrument: string,
  testVoltageV: number | null,
): FindingInput => ({
  kind: 'reading',
  quantity,
  part: 'the machine',
  value,
  instrument,
  testVoltageV,
  checkedOn: '2025-02-10',
})
