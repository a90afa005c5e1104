import { replyText, cannotTell, type SignReply } from '../../blueprint/narrow.ts'
import { signQuestionIds } from '../../blueprint/signs.ts'

/** Answers as kept in the browser. Text that holds none gives none. */
export const repliesFromText = (text: string | null): readonly SignReply[] => {
  try {
    return repliesFrom(JSON.parse(text ?? '[]'))
  } catch {
    return []
  }
}

/** The answers in a stored value: what no question or answer knows any more is left out. */
export const repliesFrom = (stored: unknown): readonly SignReply[] =>
  Array.isArray(stored) ? stored.filter(isReply).filter(isKnown) : []

const isReply = (one: unknown): one is SignReply => {
  if (typeof one !== 'object' || one === null) return false
  const { question, answer } = one as Partial<SignReply>
  return typeof answer === 'string' && question !== undefined && signQuestionIds.includes(question)
}

const isKnown = (reply: SignReply): boolean => reply.answer === cannotTell || replyText(reply) !== 'Cannot tell'
