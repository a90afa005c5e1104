import { useQueryClient } from '@tanstack/react-query'
import { useCallback, useEffect, useState } from 'react'
import { useWaitingNotes, type WaitingNote } from './outbox.ts'
import { sendWaiting } from './send-waiting.ts'

/** How often it is tried again while notes wait. */
const tryAgainMs = 10_000

export type Sending = {
  readonly waiting: readonly WaitingNote[]
  readonly sending: boolean
  readonly sendNow: () => void
}

/** Sends what waits: at once, when the network comes back, when somebody looks at the page again, and every few seconds in between. */
export const useSending = (): Sending => {
  const client = useQueryClient()
  const waiting = useWaitingNotes()
  const [sending, setSending] = useState(false)
  const count = waiting.filter(({ refused }) => refused === null).length
  const sendNow = useCallback((): void => {
    setSending(true)
    void sendWaiting(client).finally(() => setSending(false))
  }, [client])
  useEffect(() => {
    if (count === 0) return undefined
    sendNow()
    const timer = window.setInterval(sendNow, tryAgainMs)
    window.addEventListener('online', sendNow)
    window.addEventListener('focus', sendNow)
    return () => {
      window.clearInterval(timer)
      window.removeEventListener('online', sendNow)
      window.removeEventListener('focus', sendNow)
    }
  }, [count > 0, sendNow])
  return { waiting, sending, sendNow }
}
