import { inSentence } from '../../base/in-sentence.ts'
import { capital, readText, setUpText } from '../../machine/air/air-text.ts'
import { listText } from '../words.ts'
import type { Evidence } from './evidence.ts'

/** What was tested, with its figures; what is not proven is said to be not proven. */
export const testedWords = (evidence: Evidence): readonly string[] => [
  ...safetyWords(evidence),
  ...runWords(evidence),
  ...airWords(evidence),
  ...triedWords(evidence),
]

const safetyWords = ({ proof, state }: Evidence): readonly string[] => {
  const { verdict, rules, steps, voided } = proof
  const figures = steps.flatMap(({ title, findings, state: outcome }) =>
    findings
      .filter(({ note }) => note !== null)
      .map(({ read, limit, where }) => {
        const bound = limit === '' ? '' : `, limit ${limit}`
        const said = outcome === 'passed' || outcome === 'failed' ? outcome : 'does not settle it'
        return `${capital(where === '' ? title : where)}: ${read}${bound}; ${said}.`
      }),
  )
  if (verdict.kind === 'fit')
    return [
      `Checked after the work by ${rules.name}, ${rules.edition}: every check that applies has passed.`,
      ...figures,
    ]
  if (verdict.kind === 'not-fit') return [`Checked by ${rules.name}, ${rules.edition}: not fit to sell.`, ...figures]
  return [
    voided === null
      ? 'No full set of checks proves that it is fit.'
      : 'The earlier checks are void: it was opened or repaired after them, and they were not made again.',
    `It was entered as class ${state.plate.protectionClass}; nobody has proven that its insulation is sound.`,
    ...figures,
  ]
}

const runWords = ({ run, repaired }: Evidence): readonly string[] => {
  const since = repaired.length > 0
  switch (run.kind) {
    case 'good':
      return [since ? 'Run after the last repair: it ran as it should.' : 'Run: it ran as it should.']
    case 'bad':
      return [since ? 'Run after the last repair: not as it should be.' : 'Run: not as it should be.']
    case 'not-made':
      return [since ? 'Not run since the last repair.' : 'No run of the whole machine is noted.']
  }
}

/** The first and the last reading of each set-up: what the work did. */
const airWords = ({ gauge, blueprint }: Evidence): readonly string[] => {
  const byPlace = new Map<string, string[]>()
  for (const { reading } of gauge) {
    if (reading.read.measure === 'tone') continue
    const place = `${reading.read.measure === 'suction' ? 'Suction' : 'Airflow'}, ${setUpText(reading, blueprint)}`
    byPlace.set(place, [...(byPlace.get(place) ?? []), readText(reading)])
  }
  return [...byPlace].map(([place, [first = '', ...more]]) => {
    const last = more.at(-1)
    return last === undefined ? `${place}: ${first}.` : `${place}: ${first} at first, ${last} at last.`
  })
}

const triedWords = ({ tried, wrong }: Evidence): readonly string[] => {
  const again = wrong.filter(({ isMended }) => isMended).map(({ name }) => inSentence(name))
  const named = (result: string): string =>
    listText(tried.filter((one) => one.result === result).map(({ name }) => inSentence(name)))
  const [good, unsure] = [named('good'), named('cannot-tell')]
  return [
    good === '' ? '' : `Tried and good: ${good}.`,
    unsure === '' ? '' : `Tried, and it could not be told: ${unsure}.`,
    again.length === 0 ? '' : `Found bad, repaired since, and not tried again: ${listText(again)}.`,
  ]
}
