import { moneyFromText } from '../base/money.ts'
import { problem, type Problem } from '../base/problem.ts'
import { ok, refused, type Result } from '../base/result.ts'
import type { NoteContentInput } from '../bench/note.ts'
import type { Options } from './with-bench.ts'

/** What `thrum value` takes besides the machine. */
export const valueOptions = {
  hour: ['--hour <money>', 'what an hour of your own time is worth'],
  working: ['--working <money>', 'what it fetches cleaned and working'],
  spares: ['--spares <money>', 'what it fetches as it stands, for spares or repair'],
  part: ['--part <part=money...>', 'what single parts fetch, such as hose=6.50'],
} as const

/** What the plan reckons with for this machine from here on, as a note. Refused where an amount is none. */
export const valueNote = (options: Options): Result<NoteContentInput> => {
  const problems: Problem[] = []
  const amount = (written: string, where: string): number => {
    const minor = moneyFromText(written)
    if (minor !== null) return minor
    problems.push(problem('not-money', where, `“${written}” is not an amount of money`, 'Write such as 9.50'))
    return 0
  }
  const given = (name: 'hour' | 'working' | 'spares'): number | undefined => {
    const written = options[name]
    return typeof written === 'string' ? amount(written, `--${name}`) : undefined
  }
  const written = options['part']
  const parts = (Array.isArray(written) ? written : []).map((one) => {
    const [part = '', price = ''] = one.split('=')
    return { part, priceMinor: amount(price, `--part ${part}`) }
  })
  const content = {
    kind: 'valued' as const,
    hourMinor: given('hour'),
    workingMinor: given('working'),
    sparesMinor: given('spares'),
    parts,
  }
  return problems.length === 0 ? ok(content) : refused(...problems)
}
