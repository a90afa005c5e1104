import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { z } from 'zod'
import { placeText } from '../../../src/base/form/place-text.ts'
import { parse } from '../../../src/base/parse.ts'
import { problemText, type Problem } from '../../../src/base/problem.ts'
import type { Result } from '../../../src/base/result.ts'
import { advertContentSchema } from '../../../src/bench/adverts/advert-note.ts'
import { expenseContentSchema } from '../../../src/bench/books/expense-note.ts'
import { entrySchema } from '../../../src/bench/logs/entry.ts'
import { noteContentSchema, noteSchema } from '../../../src/bench/note.ts'
import { ownBlueprintSchema } from '../../../src/bench/own-blueprint.ts'
import { personSchema } from '../../../src/bench/people/person.ts'
import { priceContentSchema } from '../../../src/bench/prices/price-note.ts'
import { keptChangeSchema, settingsChangeSchema } from '../../../src/bench/settings-change.ts'
import { partContentSchema } from '../../../src/bench/shelf/part-note.ts'
import { takeOffSchema } from '../../../src/bench/shelf/take-off.ts'
import { parseEdits } from '../../../src/blueprint/adapt.ts'
import { editsFileSchema, editsSchema } from '../../../src/blueprint/adapt-edits.ts'
import { checkBlueprint } from '../../../src/blueprint/check.ts'
import { airflowRequestSchema, runAirflow } from '../../../src/engines/airflow/index.ts'
import { beliefProblemSchema, checkBeliefProblem } from '../../../src/engines/belief/index.ts'
import { limitsRequestSchema, runLimits } from '../../../src/engines/limits/index.ts'
import { moneyRequestSchema, runMoney } from '../../../src/engines/money/index.ts'
import { networkRequestSchema, runNetwork } from '../../../src/engines/network/index.ts'
import { checkPlanProblem, planProblemSchema } from '../../../src/engines/plan/index.ts'
import { advertSchema, parseAdvert } from '../../../src/machine/buying/index.ts'
import { runStamps, stampsSchema } from '../../../src/machine/index.ts'
import { manifestSchema } from '../../../src/store/backup/manifest.ts'
import { fromSchema, type Schema } from '../../fuzz/from-schema.ts'
import { mistakesIn, type Mistake } from '../../support/mistakes.ts'
import { expectPlain } from '../../support/plain-words.ts'
import { tinyBlueprint } from '../../support/tiny-blueprint.ts'

const ownBlueprint = {
  id: 'own-tiny-1',
  name: 'Mine',
  base: null,
  edits: [],
  savedAt: '2026-03-14T10:00:00.000Z',
  blueprint: { ...tinyBlueprint, id: 'own-tiny-1' },
}

type Door = {
  readonly name: string
  readonly schema: z.ZodType
  readonly take: (input: unknown) => Result<unknown>
  /** Where its places are not written as in `a[0].b`. */
  readonly places?: 'by id'
  readonly sound?: readonly unknown[]
}

const parsed = (name: string, schema: z.ZodType): Door => ({
  name,
  schema,
  take: (input) => parse(schema, input, name),
})

/** All that reads input from outside by a schema. The doors of the server are walked beside this, by its own list of routes. */
const doors: readonly Door[] = [
  { name: 'blueprint', schema: z.unknown(), take: checkBlueprint, places: 'by id', sound: [tinyBlueprint] },
  { name: 'plan problem', schema: planProblemSchema, take: checkPlanProblem },
  { name: 'belief problem', schema: beliefProblemSchema, take: checkBeliefProblem },
  { name: 'network request', schema: networkRequestSchema, take: runNetwork },
  { name: 'airflow request', schema: airflowRequestSchema, take: runAirflow },
  { name: 'limits request', schema: limitsRequestSchema, take: runLimits },
  { name: 'money request', schema: moneyRequestSchema, take: runMoney },
  { name: 'stamps', schema: stampsSchema, take: runStamps },
  { name: 'advert', schema: advertSchema, take: parseAdvert },
  { name: 'edits', schema: editsSchema, take: parseEdits },
  { name: 'file of edits', schema: editsFileSchema, take: parseEdits },
  parsed('note', noteContentSchema),
  parsed('line of notes', noteSchema),
  parsed('part', partContentSchema),
  parsed('kept advert', advertContentSchema),
  parsed('price', priceContentSchema),
  parsed('expense', expenseContentSchema),
  parsed('take-off', takeOffSchema),
  parsed('settings', settingsChangeSchema),
  parsed('kept change', keptChangeSchema),
  parsed('entry', entrySchema),
  parsed('person', personSchema),
  { ...parsed('own blueprint', ownBlueprintSchema), sound: [ownBlueprint] },
  parsed('manifest', manifestSchema),
]

const words = ['motor', 'motor-1', 'own-tub-1', 'GBP', '13']

/** Inputs of a door's form, of each kind that it knows. */
const samplesOf = ({ schema, sound }: Door): readonly unknown[] => {
  if (sound !== undefined) return sound
  const whole = z.toJSONSchema(schema, { io: 'input' }) as Schema
  const forms = whole.oneOf ?? whole.anyOf ?? [whole]
  const each = forms.length > 1 ? 1 : 2
  return forms.flatMap((form) => fc.sample(fromSchema(form, whole, words), { numRuns: each, seed: 7 }))
}

/** Whether a place that is said lies at the mistake, within it, or around it. */
const pointsAt = (mistake: Mistake, { where }: Problem): boolean => {
  const place = placeText(mistake.path)
  return where.startsWith(place) || place.startsWith(where)
}

/** Those of the problems that the sample did not have before the mistake: not every sample is without one. */
const fresh = (problems: readonly Problem[], before: Result<unknown>): readonly Problem[] => {
  const had = new Set(before.kind === 'refused' ? before.problems.map(problemText) : [])
  return problems.filter((one) => !had.has(problemText(one)))
}

describe.each(doors)('a mistake of form in $name', (door) => {
  const refused = samplesOf(door).flatMap((sample) => {
    const before = door.take(sample)
    return [...mistakesIn(sample)].flatMap((mistake) => {
      const result = door.take(mistake.input)
      const problems = result.kind === 'refused' ? fresh(result.problems, before) : []
      return problems.length === 0 ? [] : [{ mistake, problems }]
    })
  })

  it('is told in plain words: what, where and what would be right', () => {
    for (const { mistake, problems } of refused) expectPlain(problems, mistake)
    const found = new Set(refused.map(({ mistake }) => mistake.kind))
    expect([...found]).toEqual(expect.arrayContaining(['wrong type', 'unknown field']))
  })

  it('is told at its place', () => {
    if (door.places === 'by id') return
    for (const { mistake, problems } of refused) {
      if (mistake.path.length === 0 || problems.some(({ code }) => code !== 'not-of-the-form')) continue
      const isThere = problems.some((one) => pointsAt(mistake, one))
      expect(isThere, JSON.stringify({ mistake, problems }).slice(0, 1500)).toBe(true)
    }
  })
})
