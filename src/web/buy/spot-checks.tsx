import { useState } from 'react'
import { Button } from 'react-aria-components/Button'
import type { Problem } from '../../base/problem.ts'
import { resultText } from '../../bench/words.ts'
import type { Blueprint } from '../../blueprint/schema.ts'
import type { BuyingView } from '../../machine/buying/index.ts'
import type { ReadingResult } from '../../machine/result.ts'
import { readingFromEntry } from '../keypad.ts'
import { Field } from '../parts/field.tsx'
import { minutesText } from '../words.ts'
import { thenText } from './buy-words.ts'
import type { BuyDraft } from './draft.ts'
import { Answered, Worth } from './questions.tsx'

type SpotProps = {
  readonly view: BuyingView
  readonly blueprint: Blueprint
  readonly draft: BuyDraft
  readonly change: (part: Partial<BuyDraft>) => void
}

/** What to look at and to measure before paying, with what must not be done there beside it. */
export const SpotChecks = ({ view, blueprint, draft, change }: SpotProps) => {
  const enter = (check: string, result: ReadingResult): void =>
    change({ looked: [...draft.looked.filter((one) => one.check !== check), { check, result }] })
  const answer = (question: string, given: string): void =>
    change({ answers: [...draft.answers.filter((one) => one.question !== question), { question, answer: given }] })
  const isDone = (id: string): boolean =>
    draft.looked.some(({ check }) => check === id) || draft.answers.some(({ question }) => question === id)
  return (
    <section aria-label="On the spot">
      <h2>Look at before you pay</h2>
      <p className="buy-caution">
        <strong>Never plug it in at the seller’s.</strong> Nobody knows yet that it is safe. Plug out of the socket, in
        your sight, for every check here; meter on ohms, never on mains. Open nothing. Old dust is foul: do not shake,
        beat or blow into it.
      </p>
      <Answered draft={draft} hows={['look']} change={change} />
      <Looked draft={draft} blueprint={blueprint} change={change} />
      <div className="buy-asks">
        {view.spotChecks
          .filter(({ id }) => !isDone(id))
          .map((check) => (
            <div key={check.id} role="group" aria-label={check.name}>
              <p>
                <strong>{check.name}</strong>
                <span className="quiet">, {minutesText(check.minutes)}.</span>{' '}
                <Worth value={check.valueMinor} moves={check.movesMinor} view={view} />
              </p>
              {check.how === check.name ? null : <p className="hint">{check.how}</p>}
              {isMeter(blueprint, check.id) ? (
                <MeterEntry enter={(result) => enter(check.id, result)} />
              ) : (
                <div className="buy-answers">
                  {check.results.map(({ id, text, ceilingMinor }) => (
                    <Button
                      key={id}
                      className="key"
                      onPress={() => (check.kind === 'look' ? answer(check.id, id) : enter(check.id, gradeOf(id)))}
                    >
                      <span>{text}</span>
                      <small>{thenText(ceilingMinor, view.currency)}</small>
                    </Button>
                  ))}
                </div>
              )}
            </div>
          ))}
      </div>
    </section>
  )
}

const isMeter = ({ checks }: Blueprint, id: string): boolean =>
  checks.some((check) => check.id === id && check.kind === 'meter')

const gradeOf = (outcome: string): ReadingResult =>
  outcome === 'cannot-tell' ? { kind: 'cannot-tell' } : { kind: 'grade', outcome }

/** What the meter shows between the pins, typed or tapped. */
const MeterEntry = ({ enter }: { readonly enter: (result: ReadingResult) => void }) => {
  const [typed, setTyped] = useState('')
  const [problems, setProblems] = useState<readonly Problem[]>([])
  const take = (): void => {
    const read = readingFromEntry(typed, 'Ω')
    if (read.kind === 'ok') enter(read.value)
    else setProblems(read.problems)
  }
  return (
    <div className="buy-meter">
      <Field label="Meter shows" unit="Ω" value={typed} onChange={setTyped} inputMode="decimal" problems={problems} />
      <Button className="key" onPress={take}>
        Enter
      </Button>
      <Button className="key" onPress={() => enter({ kind: 'open' })}>
        Open
      </Button>
      <Button className="key" onPress={() => enter({ kind: 'jumps' })}>
        Jumps when moved
      </Button>
    </div>
  )
}

/** Checks made, each to be taken back. */
const Looked = ({ draft, blueprint, change }: Omit<SpotProps, 'view'>) =>
  draft.looked.length === 0 ? null : (
    <ul className="buy-given" aria-label="Looked at">
      {draft.looked.map(({ check, result }) => (
        <li key={check}>
          <span>
            <span className="quiet">{blueprint.checks.find(({ id }) => id === check)?.name ?? check}:</span>{' '}
            {lookedText(blueprint, check, result)}
          </span>
          <Button
            className="plain"
            aria-label={`Take back: ${blueprint.checks.find(({ id }) => id === check)?.name ?? check}`}
            onPress={() => change({ looked: draft.looked.filter((one) => one.check !== check) })}
          >
            Take back
          </Button>
        </li>
      ))}
    </ul>
  )

const lookedText = ({ checks }: Blueprint, id: string, result: ReadingResult): string =>
  resultText(
    result,
    checks.find((one) => one.id === id),
  )
