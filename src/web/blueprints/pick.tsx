import { useEffect, useRef, useState, type ReactNode } from 'react'
import { Button } from 'react-aria-components/Button'
import type { BlueprintEntry } from '../../blueprint/entry.ts'
import { cannotTell, narrow, replyText, signQuestion } from '../../blueprint/narrow.ts'
import type { AskedQuestion, Narrowed, SignReply } from '../../blueprint/narrow.ts'
import { say } from '../parts/live.tsx'
import { sentence } from '../words.ts'
import { kindsOf } from './kinds.ts'
import { Pictures, type Choice } from './pictures.tsx'
import '../style/pick.css'

type PickProps = {
  readonly entries: readonly BlueprintEntry[]
  readonly replies: readonly SignReply[]
  readonly onReplies: (replies: readonly SignReply[]) => void
  /** How an entry is chosen: a link to it, or a button. */
  readonly choice: Choice
  /** What is wrong with the choice so far. */
  readonly problem?: ReactNode
}

/** Picks an architecture by a few questions that looking answers, or from the pictures of those that still fit. */
export const Pick = ({ entries, replies, onReplies, choice, problem }: PickProps) => {
  const [picked, setPicked] = useState<string | null>(null)
  const left = narrow(entries, replies)
  const kinds = kindsOf(leftOf(left))
  const kept = kinds.find((kind) => kind.entries[0].id === picked)
  const count = countText(left, entries)
  const { heading, willMove } = useMovedFocus(kept?.name ?? count, replies)
  const change = (next: readonly SignReply[]): void => {
    willMove()
    setPicked(null)
    onReplies(next)
  }
  const pick = (id: string | null): void => {
    willMove()
    setPicked(id)
  }
  const takeBack = (reply: SignReply): void => change(replies.filter((one) => one !== reply))
  return (
    <section className="pick" aria-label="Which is it?">
      <Given replies={replies} takeBack={takeBack} picked={kept?.name ?? null} onUnpick={() => pick(null)} />
      <h2 ref={heading} tabIndex={-1} className="pick-question" data-wrong={problem === undefined ? undefined : ''}>
        {kept === undefined ? headingText(left) : plateQuestion}
      </h2>
      {problem}
      {kept === undefined ? (
        <Ask left={left} onAnswer={(reply) => change([...replies, reply])} onTakeBack={takeBack} />
      ) : null}
      {kept === undefined ? <p className="quiet">{count}</p> : null}
      <Pictures
        kinds={kept === undefined ? kinds : [kept]}
        choice={choice}
        against={againstOf(left)}
        onKind={(kind) => pick(kind.entries[0].id)}
      />
    </section>
  )
}

/** What was pressed is gone after an answer: the focus then goes to the heading, and a reader hears what is left. */
const useMovedFocus = (said: string, replies: readonly SignReply[]) => {
  const heading = useRef<HTMLHeadingElement>(null)
  const moves = useRef(false)
  useEffect(() => {
    if (!moves.current) return
    moves.current = false
    heading.current?.focus()
    say(said)
  }, [said, replies])
  return { heading, willMove: () => void (moves.current = true) }
}

const plateQuestion = 'Which rating plate?'

type AskProps = {
  readonly left: Narrowed<BlueprintEntry>
  readonly onAnswer: (reply: SignReply) => void
  readonly onTakeBack: (reply: SignReply) => void
}

const Ask = ({ left, onAnswer, onTakeBack }: AskProps) => {
  if (left.kind === 'fits') return left.next === null ? null : <Answers question={left.next} onAnswer={onAnswer} />
  return (
    <Button className="key" onPress={() => onTakeBack(left.takeBack)}>
      Take back: {answerText(left.takeBack)}
    </Button>
  )
}

const leftOf = (left: Narrowed<BlueprintEntry>): readonly BlueprintEntry[] =>
  left.kind === 'fits' ? left.entries : left.nearest.map(({ entry }) => entry)

const againstOf = (left: Narrowed<BlueprintEntry>): ReadonlyMap<string, string> =>
  new Map(
    left.kind === 'fits'
      ? []
      : left.nearest.map(({ entry, against }) => [entry.id, against.map(answerText).join('; ')] as const),
  )

const headingText = (left: Narrowed<BlueprintEntry>): string => {
  if (left.kind === 'none') return 'Nothing here fits all of that'
  if (left.next !== null) return left.next.question
  const kinds = kindsOf(left.entries).length
  return kinds > 1 ? 'Looking tells no more: which of these?' : left.entries.length > 1 ? plateQuestion : 'This one'
}

const countText = (left: Narrowed<BlueprintEntry>, entries: readonly BlueprintEntry[]): string => {
  const all = kindsOf(entries).length
  if (left.kind === 'none') return 'Take that answer back, or choose the nearest:'
  const kinds = kindsOf(left.entries).length
  if (left.next === null) return all === 1 ? 'The one kind that is known here.' : `${kinds} of ${all} kinds fits.`
  return kinds === all ? `Or pick it from the pictures: ${all} kinds.` : `${kinds} of ${all} kinds fit.`
}

/** An answer in short: what stands before its colon. */
const answerText = (reply: SignReply): string => replyText(reply).replace(/:.*$/, '')

const Answers = ({
  question,
  onAnswer,
}: {
  readonly question: AskedQuestion
  readonly onAnswer: (reply: SignReply) => void
}) => (
  <div className="answers" role="group" aria-label={question.question}>
    {question.answers.map(({ id, name }) => (
      <Button key={id} className="key" onPress={() => onAnswer({ question: question.id, answer: id })}>
        {name}
      </Button>
    ))}
    <Button className="key" onPress={() => onAnswer({ question: question.id, answer: cannotTell })}>
      Cannot tell
    </Button>
  </div>
)

type GivenProps = {
  readonly replies: readonly SignReply[]
  readonly takeBack: (reply: SignReply) => void
  /** The name of the kind that was picked from the pictures, or null. */
  readonly picked: string | null
  readonly onUnpick: () => void
}

const Given = ({ replies, takeBack, picked, onUnpick }: GivenProps) =>
  replies.length === 0 && picked === null ? null : (
    <ul className="given" aria-label="Answers so far">
      {replies.map((reply) => (
        <GivenLine
          key={reply.question}
          name={signQuestion(reply.question).question}
          answer={answerText(reply)}
          takeBack={() => takeBack(reply)}
        />
      ))}
      {picked === null ? null : <GivenLine name="Picked by its picture:" answer={picked} takeBack={onUnpick} />}
    </ul>
  )

type GivenLineProps = { readonly name: string; readonly answer: string; readonly takeBack: () => void }

const GivenLine = ({ name, answer, takeBack }: GivenLineProps) => (
  <li>
    <span>
      <span className="quiet">{name}</span> {sentence(answer)}
    </span>
    <Button className="plain" aria-label={`Take back: ${answer}`} onPress={takeBack}>
      Take back
    </Button>
  </li>
)
