import { lazy, Suspense, useState, type FormEvent } from 'react'
import { Button } from 'react-aria-components/Button'
import { moneyFromText, moneyText } from '../../base/money.ts'
import { problem, type Problem } from '../../base/problem.ts'
import { quantityFromText } from '../../base/units.ts'
import { repairBarriers } from '../../facts/open-repair-data.ts'
import type { ExitMove } from '../../machine/view.ts'
import { dryingOf } from '../clean/drying-of.ts'
import { Field } from '../parts/field.tsx'
import { say } from '../parts/live.tsx'
import { Problems } from '../parts/problems.tsx'
import { Select } from '../parts/select.tsx'
import { problemsAt, problemsElsewhere } from '../problems-at.ts'
import { useNotes } from '../use-notes.ts'
import { exitNames } from '../words.ts'
import { CoversNoted } from './covers-noted.tsx'
import { coverNotes } from './entry-notes.ts'
import { mayWarn } from './may-warn.ts'
import { useSheet } from './sheet.ts'
import { useSafeToSell } from './use-safe-to-sell.tsx'

const DryingAlert = lazy(async () => ({ default: (await import('../clean/drying-alert.tsx')).DryingAlert }))
const StripWarning = lazy(async () => ({ default: (await import('../strip/strip-warning.tsx')).StripWarning }))

/** A machine leaving the bench: what it fetched, and for one sold working, what shows that it is safe. */
export const ExitEntry = ({ move, onDone }: { readonly move: ExitMove; readonly onDone: () => void }) => {
  const { bench, document, blueprint, view, stale } = useSheet()
  const { write, busy, problems } = useNotes(bench, document.state.id)
  const exit = view?.exits.find((one) => one.id === move.exit)
  const fetches = Math.max(0, exit?.expectedMinor ?? 0)
  // A virtual machine is sold at what it is expected to fetch; for a real one only its owner knows.
  const [received, setReceived] = useState(() =>
    startAmount(move, document.state.practiceSeed === null ? null : fetches),
  )
  const [minutes, setMinutes] = useState('0')
  const [fee, setFee] = useState('')
  const [postage, setPostage] = useState('')
  const [safety, setSafety] = useState('')
  const [barrier, setBarrier] = useState('')
  const { isFit, verdict } = useSafeToSell(move)
  const [slips, setSlips] = useState<readonly Problem[]>([])
  const needsSafety = move.exit === 'sell-working' && !isFit
  const submit = async (event: FormEvent): Promise<void> => {
    event.preventDefault()
    const receivedMinor = moneyFromText(received)
    const took = quantityFromText(minutes, 'durationMin', 'minutes')
    const wrong = took.kind === 'refused' ? [...took.problems] : []
    if (receivedMinor === null)
      wrong.push(
        problem('not-money', 'receivedMinor', 'No amount of money is entered', 'Write what you were paid, like 35.00'),
      )
    const feeMinor = fee.trim() === '' ? 0 : moneyFromText(fee)
    const postageMinor = postage.trim() === '' ? 0 : moneyFromText(postage)
    if (feeMinor === null) wrong.push(notAmount('feeMinor'))
    if (postageMinor === null) wrong.push(notAmount('postageMinor'))
    if (needsSafety && safety.trim() === '') wrong.push(noSafety)
    setSlips(wrong)
    if (receivedMinor === null || took.kind === 'refused' || wrong.length > 0) return
    const known = repairBarriers.find((one) => one === barrier)
    const left = {
      kind: 'left' as const,
      exit: move.exit,
      receivedMinor,
      ...(feeMinor === null || feeMinor === 0 ? {} : { feeMinor }),
      ...(postageMinor === null || postageMinor === 0 ? {} : { postageMinor }),
      minutes: took.value,
      safety: needsSafety ? safety.trim() : '',
      ...(known === undefined ? {} : { barrier: known }),
    }
    if (!(await write([...coverNotes(move), left]))) return
    say(`${exitNames[move.exit].past}.`)
    onDone()
  }
  const all = [...slips, ...problems]
  const at = (field: string): readonly Problem[] => problemsAt(all, field)
  return (
    <form className="entry" onSubmit={(event) => void submit(event)} aria-label="Note that it leaves">
      <Missing missing={exit?.missing ?? []} />
      {move.exit !== 'sell-working' || dryingOf(document.state).length === 0 ? null : (
        <Suspense fallback={null}>
          <DryingAlert bench={bench} machine={document.state.id} drying={dryingOf(document.state)} />
        </Suspense>
      )}
      <CoversNoted move={move} />
      {isSale(move) && document.state.off.length > 0 && mayWarn(document) ? (
        <Suspense fallback={null}>
          <StripWarning bench={bench} document={document} blueprint={blueprint} leaves />
        </Suspense>
      ) : null}
      {verdict}
      <div className="field-row">
        <Field
          label="Money received"
          value={received}
          onChange={setReceived}
          unit={document.state.currency}
          inputMode="decimal"
          hint={exit === undefined ? undefined : `expected ${moneyText(exit.expectedMinor, document.state.currency)}`}
          problems={at('receivedMinor')}
        />
        <Field
          label="Minutes selling"
          value={minutes}
          onChange={setMinutes}
          unit="min"
          inputMode="decimal"
          problems={at('minutes')}
        />
      </div>
      {move.exit === 'scrap' ? null : (
        <div className="field-row">
          <Field
            label="Fee of selling"
            value={fee}
            onChange={setFee}
            unit={document.state.currency}
            inputMode="decimal"
            problems={at('feeMinor')}
          />
          <Field
            label="Postage you paid"
            value={postage}
            onChange={setPostage}
            unit={document.state.currency}
            inputMode="decimal"
            problems={at('postageMinor')}
          />
        </div>
      )}
      {isSale(move) ? null : (
        <Select label="What stood in the way of mending it" value={barrier} onChange={setBarrier}>
          <option value="">Not said</option>
          {repairBarriers.map((one) => (
            <option key={one}>{one}</option>
          ))}
        </Select>
      )}
      {needsSafety ? (
        <Field
          label="Reason for selling it unproved"
          value={safety}
          onChange={setSafety}
          long
          hint="Printed on the record. Who made the checks after the repair and with what, or why it is sold without."
          problems={at('safety')}
        />
      ) : null}
      <Problems problems={problemsElsewhere(all, ['receivedMinor', 'feeMinor', 'postageMinor', 'minutes', 'safety'])} />
      <Button type="submit" className="key enter" isDisabled={busy || stale}>
        {exitNames[move.exit].past}
      </Button>
    </form>
  )
}

/** The machine page itself warns once all covers are on. */
const isSale = ({ exit }: ExitMove): boolean => exit === 'sell-working' || exit === 'sell-for-spares'

const notAmount = (where: string): Problem =>
  problem('not-money', where, 'That is not an amount of money', 'Write it like 3.20, or leave it empty')

const noSafety = problem(
  'no-safety',
  'safety',
  'It is not proved fit to sell, and no reason is given',
  'Make the checks that are open, or write who made them and with what, or why it is sold without',
)

const startAmount = (move: ExitMove, fetchesMinor: number | null): string => {
  if (move.exit === 'scrap') return '0.00'
  return fetchesMinor === null ? '' : (Math.round(fetchesMinor) / 100).toFixed(2)
}

const Missing = ({ missing }: { readonly missing: readonly string[] }) =>
  missing.length === 0 ? null : (
    <div className="caution">
      <p>Still missing before this:</p>
      <ul>
        {missing.map((one) => (
          <li key={one}>{one}</li>
        ))}
      </ul>
    </div>
  )
