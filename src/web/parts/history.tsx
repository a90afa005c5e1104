import type { ReactNode } from 'react'
import type { EntryLine } from '../../bench/logs/entry-lines.ts'
import { useNameOf } from '../sign-in/use-who.ts'
import { dayText } from '../words.ts'
import '../style/history.css'

type HistoryProps = {
  /** In the order of the log. */
  readonly lines: readonly EntryLine[]
  readonly machineLink: (machine: string) => ReactNode
  /** What strikes an entry out, beside each that can be. */
  readonly strike: (entry: string, text: string) => ReactNode
}

/** What was written of something, the newest first, with who wrote it; what was struck out stays in it. */
export const History = ({ lines, machineLink, strike }: HistoryProps) => {
  const nameOf = useNameOf()
  return (
    <section className="panel" aria-label="History">
      <h2>History</h2>
      <ul className="history">
        {lines.toReversed().map(({ id, at, text, machine, by, isStruck, canStrike }) => (
          <li key={id}>
            <span>
              {dayText(at)}: {isStruck ? <s>{text}</s> : text}
              {machine === null ? null : <> {machineLink(machine)}</>}
              {nameOf(by) === undefined ? null : <span className="quiet"> by {nameOf(by)}</span>}
            </span>
            {canStrike ? strike(id, text) : null}
          </li>
        ))}
      </ul>
    </section>
  )
}
