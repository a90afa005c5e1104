/**
 * Asks the same thing once at a time. Whoever asks while it is being asked gets the answer of the next turn, together with all others who
 * wait: never one that was begun before they asked, so each finds what was written before.
 */
export const inTurn = <Answer>(ask: (key: string) => Promise<Answer>): ((key: string) => Promise<Answer>) => {
  const running = new Map<string, Promise<Answer>>()
  const waiting = new Map<string, Promise<Answer>>()
  const begin = (key: string): Promise<Answer> => {
    waiting.delete(key)
    const answer = ask(key).finally(() => running.get(key) === answer && running.delete(key))
    running.set(key, answer)
    return answer
  }
  const afterThis = (key: string, now: Promise<unknown>): Promise<Answer> => {
    const next = now.then(
      () => begin(key),
      () => begin(key),
    )
    waiting.set(key, next)
    return next
  }
  return (key) => {
    const now = running.get(key)
    return waiting.get(key) ?? (now === undefined ? begin(key) : afterThis(key, now))
  }
}
