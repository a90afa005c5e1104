import { describe, expect, it } from 'vitest'
import { learnNaiveBayes, signsProblem, updateBelief } from '../../../src/engines/belief/index.ts'

const repeated = (count: number, kind: number, sign: number) =>
  Array.from({ length: count }, () => ({ kind, signs: [sign] }))

describe('learnNaiveBayes', () => {
  it('learns a sign that tells two kinds apart', () => {
    const model = learnNaiveBayes([...repeated(40, 0, 0), ...repeated(40, 1, 1)], 2, 2)
    expect(updateBelief(signsProblem(model, [0])).probability[0]).toBeGreaterThan(0.9)
    expect(updateBelief(signsProblem(model, [1])).probability[1]).toBeGreaterThan(0.9)
  })

  it('leans hard on the common pattern when all kinds show the same, hardly when they do not', () => {
    const alike = [0, 1].flatMap((kind) => [...repeated(20, kind, 0), ...repeated(10, kind, 1)])
    const apart = [...repeated(30, 0, 0), ...repeated(30, 1, 1)]
    expect(learnNaiveBayes(alike, 2, 2).concentration).toBeGreaterThan(100)
    expect(learnNaiveBayes(apart, 2, 2).concentration).toBeLessThan(2)
  })

  it('a kind never met shows the common pattern, and all distributions sum to 1', () => {
    const model = learnNaiveBayes([...repeated(30, 0, 0), ...repeated(10, 1, 1)], 3, 2)
    const common = [30.5 / 41, 10.5 / 41]
    common.forEach((share, sign) => expect(model.likelihood[sign][2]).toBeCloseTo(share, 12))
    for (const kind of [0, 1, 2]) expect(model.likelihood.reduce((sum, row) => sum + row[kind], 0)).toBeCloseTo(1, 12)
    expect(model.prior[2]).toBeCloseTo(1 / 43, 12)
  })

  it('without any sign the belief is the prior', () => {
    const model = learnNaiveBayes(repeated(3, 0, 0), 2, 2)
    const { probability } = updateBelief(signsProblem(model, []))
    model.prior.forEach((p, kind) => expect(probability[kind]).toBeCloseTo(p, 14))
  })
})
