import { signQuestions, type SignQuestion, type SignQuestionId } from './signs.ts'

/** What a blueprint says of the questions that are answered by looking; a question left out is answered by any. */
export type Signs = Readonly<Partial<Record<SignQuestionId, readonly string[]>>>
/** A question whose id is known to be one of ours. */
export type AskedQuestion = SignQuestion & { readonly id: SignQuestionId }
type Signed = { readonly signs: Signs }

/** The answer of someone who cannot tell: it rules nothing out. */
export const cannotTell = 'cannot-tell'

/** One answer, in the order they were given. `answer`: an answer's id, or `cannotTell`. */
export type SignReply = { readonly question: SignQuestionId; readonly answer: string }

/** What is left of the entries after the answers so far. */
export type Narrowed<E> =
  | {
      readonly kind: 'fits'
      /** Entries that no answer speaks against, in the order given. */
      readonly entries: readonly E[]
      /** The question to ask next; null when no question tells those that are left apart. */
      readonly next: AskedQuestion | null
    }
  | {
      readonly kind: 'none'
      /** The answer to take back first: the one that stands against most of the nearest entries, of several the last given. */
      readonly takeBack: SignReply
      /** Entries that the fewest answers speak against, and which these are. */
      readonly nearest: readonly { readonly entry: E; readonly against: readonly SignReply[] }[]
    }

/** The questions in the order of `signQuestions`. */
export const allSignQuestions: readonly AskedQuestion[] = signQuestions

/** The question with this id. */
export const signQuestion = (id: SignQuestionId): AskedQuestion => signQuestions.find((question) => question.id === id)!

/** An answer in the words of its question; `Cannot tell` for that one. */
export const replyText = ({ question, answer }: SignReply): string =>
  signQuestion(question).answers.find(({ id }) => id === answer)?.name ?? 'Cannot tell'

/**
 * Entries that still fit the answers, and the question to ask next. When a question is answered twice both answers count.
 * An empty list of entries gives `fits` with nothing in it.
 */
export const narrow = <E extends Signed>(entries: readonly E[], replies: readonly SignReply[]): Narrowed<E> => {
  const judged = entries.map((entry) => ({ entry, against: replies.filter((reply) => !allows(entry.signs, reply)) }))
  const fitting = judged.filter(({ against }) => against.length === 0).map(({ entry }) => entry)
  if (fitting.length > 0 || judged.length === 0)
    return { kind: 'fits', entries: fitting, next: nextQuestion(fitting, replies) }
  const fewest = Math.min(...judged.map(({ against }) => against.length))
  const nearest = judged.filter(({ against }) => against.length === fewest)
  return { kind: 'none', takeBack: mostInTheWay(nearest, replies), nearest }
}

/** Entries with the same signs cannot be told apart by looking: they are the mains variants of one architecture. */
export const sameSigns = (signs: Signs): string =>
  JSON.stringify(signQuestions.map(({ id }) => [...(signs[id] ?? [])].sort()))

const allows = (signs: Signs, { question, answer }: SignReply): boolean =>
  answer === cannotTell || (signs[question]?.includes(answer) ?? true)

const mostInTheWay = (
  nearest: readonly { readonly against: readonly SignReply[] }[],
  replies: readonly SignReply[],
): SignReply =>
  replies
    .map((reply) => ({ reply, entries: nearest.filter(({ against }) => against.includes(reply)).length }))
    .reduce((most, one) => (one.entries >= most.entries ? one : most)).reply

/** The unanswered question that is expected to tell most, the first of equals; null when none tells anything. */
const nextQuestion = (entries: readonly Signed[], replies: readonly SignReply[]): AskedQuestion | null => {
  const asked = replies.map(({ question }) => question)
  const kinds = new Map(entries.map(({ signs }) => [sameSigns(signs), signs]))
  const ranked = signQuestions
    .filter(({ id }) => !asked.includes(id))
    .map((question) => ({ question, bits: canTell(question) * expectedBits(question, [...kinds.values()]) }))
  const most = Math.max(0, ...ranked.map(({ bits }) => bits))
  return most < leastBits ? null : (ranked.find(({ bits }) => bits > most - leastBits)?.question ?? null)
}

/** How often a person who looks can tell; who cannot learns nothing by the question. Judgement. */
const canTell = ({ id }: AskedQuestion): number => shareWhoTell[id] ?? 0.9
const shareWhoTell: Readonly<Partial<Record<SignQuestionId, number>>> = { stands: 0.99, dust: 0.95, brush: 0.7 }

/** What rounding leaves of nothing. */
const leastBits = 1e-9

/**
 * Information that the answer is expected to give about which kind it is, in bits: how uncertain the answer is, less how
 * uncertain it is once the kind is known. Kinds are equally likely; a kind that several answers fit gives each as often.
 */
const expectedBits = (question: AskedQuestion, kinds: readonly Signs[]): number => {
  const rows = kinds.map((signs) => {
    const fitting = signs[question.id] ?? question.answers.map(({ id }) => id)
    return question.answers.map(({ id }) => (fitting.includes(id) ? 1 / fitting.length : 0))
  })
  const overall = question.answers.map((_, k) => rows.reduce((sum, row) => sum + (row[k] ?? 0), 0) / rows.length)
  const known = rows.reduce((sum, row) => sum + entropyBits(row), 0) / rows.length
  return rows.length === 0 ? 0 : entropyBits(overall) - known
}

/** Shannon's entropy of a distribution, in bits. */
const entropyBits = (shares: readonly number[]): number =>
  shares.reduce((sum, p) => (p > 0 ? sum - p * Math.log2(p) : sum), 0)
