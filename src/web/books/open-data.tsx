import { useQueryClient } from '@tanstack/react-query'
import { useRef, useState } from 'react'
import { Button } from 'react-aria-components/Button'
import { problemText, type Problem } from '../../base/problem.ts'
import { sourceText } from '../../base/source-text.ts'
import { openRepairSource } from '../../facts/open-repair-data.ts'
import type { BenchId } from '../../bench/contract.ts'
import type { OpenDataOutcome } from '../../bench/open-data/import-records.ts'
import { postTo } from '../api.ts'
import { Field } from '../parts/field.tsx'
import { Fold } from '../parts/fold.tsx'
import { say } from '../parts/live.tsx'
import { RecordsList, recordsKey } from './records-list.tsx'

const mistakesShown = 20

/** Repair records by the Open Repair Data Standard: the closed machines out, those of others in. */
export const OpenData = ({ bench }: { readonly bench: BenchId }) => {
  const [provider, setProvider] = useState('')
  const name = provider.trim()
  return (
    <section className="books-part" aria-label="Open repair data">
      <h2>Open repair data</h2>
      <p>
        Closed machines as records of the Open Repair Data Standard 0.3, for anyone who studies what breaks. What nobody
        noted stays empty; no price is in it, and addresses of mail and telephone numbers are left out.
      </p>
      <Field
        label="Given out under the name of"
        value={provider}
        onChange={setProvider}
        hint="Empty: no name stands in it."
      />
      <p>
        <a
          className="on-its-own"
          href={`/api/bench/${bench}/open-data.csv${name === '' ? '' : `?provider=${encodeURIComponent(name)}`}`}
          download
        >
          Closed machines (CSV)
        </a>
      </p>
      <ImportRecords bench={bench} />
      <Fold title="Look at the records of others">
        <RecordsList bench={bench} />
      </Fold>
      <p className="hint">{sourceText(openRepairSource)}</p>
    </section>
  )
}

const ImportRecords = ({ bench }: { readonly bench: BenchId }) => {
  const queryClient = useQueryClient()
  const input = useRef<HTMLInputElement>(null)
  const [busy, setBusy] = useState(false)
  /** The file that waits to be mended, or for its wrong rows to be left out. */
  const [csv, setCsv] = useState<string | null>(null)
  const [problems, setProblems] = useState<readonly Problem[]>([])
  const [done, setDone] = useState('')
  const take = async (text: string, leaveOutWrong: boolean): Promise<void> => {
    setBusy(true)
    const answer = await postTo<Extract<OpenDataOutcome, { kind: 'imported' }>>(`/bench/${bench}/open-data/import`, {
      csv: text,
      leaveOutWrong,
    })
    setBusy(false)
    setCsv(answer.kind === 'ok' ? null : text)
    setProblems(answer.kind === 'ok' ? answer.value.leftOut : answer.problems)
    const words = answer.kind === 'ok' ? doneText(answer.value) : ''
    setDone(words)
    if (words !== '') say(words)
    await queryClient.invalidateQueries({ queryKey: recordsKey(bench) })
  }
  const choose = async (files: FileList | null): Promise<void> => {
    const file = files?.[0]
    if (file !== undefined) await take(await file.text(), false)
    // The same file can be chosen again once it is mended.
    if (input.current !== null) input.current.value = ''
  }
  const rowsOnly = problems.every(({ where }) => /^row (?!1\b)/.test(where))
  return (
    <>
      <p>
        Records of others are kept to look at. They count in no price, no rate and no sum. The same file twice changes
        nothing.
      </p>
      <Button className="key" isDisabled={busy} onPress={() => input.current?.click()}>
        Take in a file of records
      </Button>
      <input
        ref={input}
        type="file"
        accept=".csv,text/csv"
        className="unseen"
        tabIndex={-1}
        aria-label="File of repair records"
        onChange={(event) => void choose(event.target.files)}
      />
      {done === '' ? null : <p role="status">{done}</p>}
      {problems.length === 0 ? null : (
        <div className="problems" role="alert">
          <p>
            {csv === null ? 'Left out:' : 'Nothing was taken in.'} {problems.length}{' '}
            {problems.length === 1 ? 'mistake' : 'mistakes'}
            {problems.length > mistakesShown ? `, the first ${mistakesShown} of them` : ''}:
          </p>
          <ul className="mistakes">
            {problems.slice(0, mistakesShown).map((one) => (
              <li key={problemText(one)}>
                {one.where === '' ? null : <b>{one.where}:</b>} {one.what}. {one.mend}.
              </li>
            ))}
          </ul>
          {csv === null || !rowsOnly ? null : (
            <Button className="key" isDisabled={busy} onPress={() => void take(csv, true)}>
              Leave out the wrong rows
            </Button>
          )}
        </div>
      )}
    </>
  )
}

const doneText = ({ imported, already, others, unread }: Extract<OpenDataOutcome, { kind: 'imported' }>): string =>
  [
    `Taken in: ${imported}.`,
    already === 0 ? '' : `There already: ${already}.`,
    others === 0 ? '' : `Of other products: ${others}.`,
    unread.length === 0 ? '' : `Not read: ${unread.join(', ')}.`,
  ]
    .filter((one) => one !== '')
    .join(' ')
