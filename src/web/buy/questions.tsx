import { Button } from 'react-aria-components/Button'
import { moneyText } from '../../base/money.ts'
import { sellerQuestions } from '../../facts/seller-questions.ts'
import type { BuyingView } from '../../machine/buying/index.ts'
import { Fold } from '../parts/fold.tsx'
import { thenText } from './buy-words.ts'
import type { BuyDraft } from './draft.ts'

type QuestionsProps = {
  readonly view: BuyingView
  readonly draft: BuyDraft
  readonly change: (part: Partial<BuyDraft>) => void
}

/** What to ask the seller, most worth first. An answer moves the most to pay at once and can be taken back. */
export const Questions = ({ view, draft, change }: QuestionsProps) => {
  const answer = (question: string, given: string): void =>
    change({ answers: [...draft.answers.filter((one) => one.question !== question), { question, answer: given }] })
  const open = view.questions.filter(({ id }) => !draft.answers.some(({ question }) => question === id))
  return (
    <section aria-label="Ask the seller">
      <h2>Ask the seller</h2>
      <p className="hint">Ask what they saw it do. Do not have it plugged in to show you.</p>
      <Answered draft={draft} hows={['ask', 'photo']} change={change} />
      <div className="buy-asks">
        {open.map(({ id, text, valueMinor, movesMinor, results }) => (
          <div key={id} role="group" aria-label={text}>
            <p>
              <strong>{text}</strong> <Worth value={valueMinor} moves={movesMinor} view={view} />
            </p>
            <div className="buy-answers">
              {results.map((result) => (
                <Button key={result.id} className="key" onPress={() => answer(id, result.id)}>
                  <span>{result.text}</span>
                  <small>{thenText(result.ceilingMinor, view.currency)}</small>
                </Button>
              ))}
            </div>
          </div>
        ))}
      </div>
      <Fold title="Ask of every machine">
        <ul>
          {view.alwaysAsk.map((text) => (
            <li key={text}>{text}</li>
          ))}
        </ul>
      </Fold>
    </section>
  )
}

type WorthProps = { readonly value: number; readonly moves: number; readonly view: Pick<BuyingView, 'currency'> }

/** What knowing it is worth before paying; where no answer would change the deal, how far it moves the most to pay. */
export const Worth = ({ value, moves, view: { currency } }: WorthProps) => (
  <span className="quiet">
    {Math.round(value) > 0
      ? `Knowing is worth ${moneyText(value, currency)}.`
      : `Moves the most to pay by ${moneyText(moves, currency)} on average.`}
  </span>
)

type AnsweredProps = Pick<QuestionsProps, 'draft' | 'change'> & { readonly hows: readonly string[] }

/** What was answered, each to be taken back. */
export const Answered = ({ draft, hows, change }: AnsweredProps) => {
  const given = draft.answers.flatMap(({ question, answer }) => {
    const asked = sellerQuestions.find(({ id, how }) => id === question && hows.includes(how))
    return asked === undefined
      ? []
      : [{ id: question, text: asked.text, answer: asked.answers[answer] ?? 'does not know' }]
  })
  const takeBack = (id: string): void => change({ answers: draft.answers.filter(({ question }) => question !== id) })
  return given.length === 0 ? null : (
    <ul className="buy-given" aria-label="Answered">
      {given.map(({ id, text, answer }) => (
        <li key={id}>
          <span>
            <span className="quiet">{text}</span> {answer}
          </span>
          <Button className="plain" aria-label={`Take back: ${answer}`} onPress={() => takeBack(id)}>
            Take back
          </Button>
        </li>
      ))}
    </ul>
  )
}
