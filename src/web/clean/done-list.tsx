import { Button } from 'react-aria-components/Button'
import { moneyText, type Currency } from '../../base/money.ts'
import type { BenchId } from '../../bench/contract.ts'
import type { CleanView } from '../../bench/cleaning/clean-view.ts'
import { Fold } from '../parts/fold.tsx'
import { Problems } from '../parts/problems.tsx'
import { useNotes } from '../use-notes.ts'
import { minutesText, momentText } from '../words.ts'

type DoneListProps = {
  readonly bench: BenchId
  readonly machine: string
  readonly clean: CleanView
  readonly currency: Currency
  /** Not where the machine has left. */
  readonly canStrike: boolean
}

/** What was cleaned, newest first; a slip is struck out here. */
export const DoneList = ({ bench, machine, clean, currency, canStrike }: DoneListProps) => {
  const { write, busy, problems } = useNotes(bench, machine)
  const { done, minutes, costMinor } = clean
  if (done.length === 0) return null
  return (
    <Fold title={`Done: ${done.length}, ${minutesText(minutes)}, ${moneyText(costMinor, currency)}`}>
      <ul className="clean-done">
        {done.map((one) => (
          <li key={one.note}>
            <span>
              <strong>{one.name}</strong>
              <span className="quiet">
                {momentText(one.at)} · {minutesText(one.minutes)} · {moneyText(one.costMinor, currency)}
                {one.text === '' ? '' : ` · ${one.text}`}
              </span>
            </span>
            {canStrike ? (
              <Button
                className="plain"
                isDisabled={busy}
                aria-label={`Strike out: ${one.name}`}
                onPress={() => void write([{ kind: 'struck', note: one.note, reason: '' }])}
              >
                Strike out
              </Button>
            ) : null}
          </li>
        ))}
      </ul>
      <Problems problems={problems} />
    </Fold>
  )
}
