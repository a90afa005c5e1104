import { describe, expect, it } from 'vitest'
import { blueprints, blueprintById } from '../../../src/blueprint/library.ts'
import { sellerClaims } from '../../../src/facts/seller-claims.ts'
import { sellerQuestions } from '../../../src/facts/seller-questions.ts'
import { buyingView, quickEffort } from '../../../src/machine/buying/index.ts'
import { answersTold } from '../../../src/machine/buying/questions.ts'
import { weigh } from '../../../src/machine/buying/wagers.ts'
import { machineModel, suspectBelief } from '../../../src/machine/index.ts'
import type { Job } from '../../../src/machine/job.ts'
import { advertOf, termsOf } from '../../support/adverts.ts'

const upright = blueprintById('bagged-upright-two-motors')!

describe('the worth of an answer', () => {
  const ways = [Float64Array.of(1000, -1000), Float64Array.of(0, 0)]
  const told = [
    { id: 'yes', chance: Float64Array.of(0.9, 0.2) },
    { id: 'no', chance: Float64Array.of(0.1, 0.8) },
  ]

  it('is what Bayes’ rule and a decision tree give by hand', () => {
    const deal = { belief: Float64Array.of(0.5, 0.5), ways, firstMinor: 0, askingMinor: 100 }
    const { valueMinor, results } = weigh(deal, told)
    // Without it: 0 at best, less than asked. With "yes" (0.55): (0.45 − 0.1) · 1000 / 0.55 = 636.36; bought for 100.
    expect(results[0]).toMatchObject({ id: 'yes', probability: 0.55 })
    expect(results[0].ceilingMinor).toBeCloseTo(350 / 0.55, 9)
    expect(results[1].ceilingMinor).toBe(0)
    expect(valueMinor).toBeCloseTo(350 - 55, 9)
  })

  it('is nothing when no answer would change the deal', () => {
    const deal = { belief: Float64Array.of(0.99, 0.01), ways, firstMinor: 0, askingMinor: 0 }
    expect(weigh(deal, told).valueMinor).toBe(0)
    expect(weigh({ ...deal, askingMinor: 5000 }, told).valueMinor).toBe(0)
  })
})

describe('the table of questions', () => {
  it.each(sellerQuestions)('gives each row of “$id” for the answers there are, adding up to one', (question) => {
    for (const row of [question.usual, ...question.under.map(({ shows }) => shows)]) {
      expect(Object.keys(row).sort()).toEqual(Object.keys(question.answers).sort())
      expect(Object.values(row).reduce((sum, p) => sum + p, 0)).toBeCloseTo(1, 9)
    }
  })

  it('names components that some blueprint has', () => {
    const known = new Set(blueprints.flatMap(({ faults }) => faults.map(({ rate }) => rate.component?.id)))
    const named = sellerQuestions.flatMap(({ under }) => under.flatMap(({ of }) => of))
    const components = named.filter((trait) => trait.startsWith('component:')).map((trait) => trait.slice(10))
    expect(components.filter((one) => !known.has(one))).toEqual([])
  })

  it('gives answers whose chances, no answer among them, add up to one under every suspect', () => {
    const model = machineModel(upright, upright.plate)
    for (const question of sellerQuestions) {
      const told = answersTold(model, [...model.sets.keys()], question)
      for (let s = 0; s < model.sets.length; s++)
        expect(told.reduce((sum, { chance }) => sum + chance[s], 0)).toBeCloseTo(1, 9)
    }
  })
})

describe('what is said and found', () => {
  const terms = termsOf(upright, { effort: quickEffort })
  const faultsOf = (own: Parameters<typeof advertOf>[1]) => buyingView(advertOf(upright, own), terms)

  it('moves what may be wrong the way the trade would have it', () => {
    const moved = faultsOf({ answers: [{ question: 'moment', answer: 'moved' }] })
    const plain = faultsOf({})
    const leads = ({ faults }: typeof plain): number =>
      faults.filter(({ id }) => /flex|plug|loom|switch-burnt|brush/.test(id)).length
    expect(moved.faults[0].probability).not.toBe(plain.faults[0].probability)
    expect(leads(moved)).toBeGreaterThanOrEqual(leads(plain))
    expect(moved.questions.map(({ id }) => id)).not.toContain('moment')
  })

  it('says nothing where the seller does not know', () => {
    const unsure = faultsOf({ answers: [{ question: 'moment', answer: 'unsure' }] })
    expect(unsure.ceiling).toEqual(faultsOf({}).ceiling)
  })

  it('takes a check made on the spot as the machine’s own page would', () => {
    const view = faultsOf({ looked: [{ check: 'pins-on', result: { kind: 'ohms', resistanceOhm: 0.2 } }] })
    const plain = faultsOf({})
    expect(view.ceiling.exactMinor).not.toBeCloseTo(plain.ceiling.exactMinor, 0)
    expect(view.spotChecks.map(({ id }) => id)).not.toContain('pins-on')
  })

  it('shows four questions and checks that need no power and no cover off, most worth first', () => {
    const { questions, spotChecks } = faultsOf({})
    expect(questions).toHaveLength(4)
    expect(faultsOf({}).sources.every((text) => text.endsWith('(judgement)'))).toBe(true)
    const values = questions.map(({ valueMinor }) => valueMinor)
    expect(values).toEqual(values.toSorted((a, b) => b - a))
    const checks = upright.checks.filter(({ id }) => spotChecks.some((one) => one.kind === 'check' && one.id === id))
    expect(checks.length).toBeGreaterThan(0)
    for (const check of checks) {
      expect(['look', 'meter']).toContain(check.kind)
      expect(check.coversOff).toEqual([])
    }
    const rates = spotChecks.map(({ valueMinor, minutes }) => valueMinor / minutes)
    expect(rates).toEqual(rates.toSorted((a, b) => b - a))
  })
})

describe('a claim', () => {
  const job: Job = { blueprint: upright, plate: upright.plate, complaints: [], missing: [], events: [], off: [], hourMinor: 800 } // prettier-ignore
  const model = machineModel(upright, upright.plate)
  const chanceOf = (claims: NonNullable<Job['claims']>, components: readonly string[]): number => {
    const { probability } = suspectBelief(model, { ...job, claims })
    const has = (set: readonly number[]): boolean =>
      set.some((f) => components.includes(upright.faults[f].rate.component?.id ?? ''))
    return model.sets.reduce((sum, set, s) => sum + (has(set) ? probability[s] : 0), 0)
  }

  it('gives what it is about the share that it usually has', () => {
    const { about, share } = sellerClaims.wet
    expect(chanceOf(['wet'], about.kind === 'components' ? about.components : [])).toBeCloseTo(share, 9)
    expect(chanceOf([], ['water'])).toBeLessThan(share)
  })

  it('that it works makes it worth more than one of which nothing is said', () => {
    const of = (words: string): number =>
      buyingView(advertOf(upright, { complaints: [], words }), termsOf(upright, { effort: quickEffort })).ceiling
        .exactMinor
    expect(of('works, just upgrading')).toBeGreaterThan(of('untested'))
    expect(of('untested')).toBeGreaterThan(of('used on building site'))
  })
})
