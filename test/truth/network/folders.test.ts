import { readdirSync, readFileSync } from 'node:fs'
import { join } from 'node:path'
import { describe, expect, it } from 'vitest'
import { valueOf } from '../../../src/base/result.ts'
import { networkRequestSchema, runNetwork, type NetworkAnswer } from '../../../src/engines/network/index.ts'

/** `answer` is the part of the answer that the source gives. The rest are figures worked from it, for the named elements. */
type Expected = {
  readonly relativeTolerance: number
  readonly absoluteTolerance?: number
  readonly answer: unknown
  readonly currentSizeA?: Readonly<Record<string, number>>
  readonly voltageSizeV?: Readonly<Record<string, number>>
  readonly powerFactor?: Readonly<Record<string, number>>
  readonly powerW?: Readonly<Record<string, number>>
}

type Figures = { currentSizeA: number; voltageSizeV: number; powerFactor: number; powerW: number }

const here = import.meta.dirname
const cases = readdirSync(here, { withFileTypes: true }).filter((entry) => entry.isDirectory())
const json = (name: string, file: string): unknown => JSON.parse(readFileSync(join(here, name, file), 'utf8'))

const close = (expected: Expected, actual: number, wanted: number, where: string): void =>
  expect(Math.abs(actual - wanted), `${where}: ${actual} for ${wanted}`).toBeLessThanOrEqual(
    expected.relativeTolerance * Math.abs(wanted) + (expected.absoluteTolerance ?? 0),
  )

const compare = (expected: Expected, actual: unknown, wanted: unknown, where: string): void => {
  if (typeof wanted === 'number') return close(expected, Number(actual), wanted, where)
  if (typeof wanted !== 'object' || wanted === null) return expect(actual, where).toBe(wanted)
  for (const [key, value] of Object.entries(wanted)) {
    compare(expected, (actual as Record<string, unknown>)[key], value, `${where}.${key}`)
  }
}

const figures = (input: unknown, answer: NetworkAnswer, id: string): Figures => {
  const element = networkRequestSchema.parse(input).network.elements.find((one) => one.id === id)
  if (answer.kind !== 'solved' || element === undefined) throw new Error(`no figures for ${id}`)
  const [a, b, i] = [answer.voltage[element.from], answer.voltage[element.to], answer.current[id]]
  const v = { re: a.re - b.re, im: a.im - b.im }
  const voltageSizeV = Math.hypot(v.re, v.im)
  const currentSizeA = Math.hypot(i.re, i.im)
  const powerW = v.re * i.re + v.im * i.im
  return { voltageSizeV, currentSizeA, powerW, powerFactor: powerW / (voltageSizeV * currentSizeA) }
}

describe('published and closed-form cases', () => {
  it.each(cases.map((entry) => entry.name))('%s', (name) => {
    const input = json(name, 'input.json')
    const expected = json(name, 'expected.json') as Expected
    expect(readFileSync(join(here, name, 'origin.md'), 'utf8').trim()).not.toBe('')
    const answer = valueOf(runNetwork(input))
    compare(expected, answer, expected.answer, 'answer')
    for (const figure of ['currentSizeA', 'voltageSizeV', 'powerFactor', 'powerW'] as const) {
      for (const [id, wanted] of Object.entries(expected[figure] ?? {})) {
        close(expected, figures(input, answer, id)[figure], wanted, `${figure} of ${id}`)
      }
    }
  })
})
