import { useRef, useState } from 'react'
import { Button } from 'react-aria-components/Button'
import type { Problem } from '../../base/problem.ts'
import type { BenchId } from '../../bench/contract.ts'
import { importBooks } from '../api.ts'
import { Fold } from '../parts/fold.tsx'
import { say } from '../parts/live.tsx'
import { useFreshBooks } from './use-books.ts'

const mistakesShown = 30

/** Takes in what was kept before: a file of past machines. Every mistake is named by row and column. */
export const ImportPast = ({ bench }: { readonly bench: BenchId }) => {
  const { choose, input, busy, csv, problems, done, leaveOut } = useImport(bench)
  return (
    <section className="books-part" aria-label="Bring in what you kept before">
      <h2>Bring in what you kept before</h2>
      <p>
        A CSV file with a row for each past machine. Its first row names the columns, in any order: <b>name</b>,{' '}
        <b>kind</b>, <b>bought</b>, <b>paid</b>; and where known spent, minutes, left, how (sold working, for spares,
        parts, scrap), received, fees, source, complaint, model. The same file twice changes nothing.
      </p>
      <Button className="key" isDisabled={busy} onPress={() => input.current?.click()}>
        Choose a file
      </Button>
      <input
        ref={input}
        type="file"
        accept=".csv,text/csv"
        className="unseen"
        tabIndex={-1}
        aria-label="File of past machines"
        onChange={(event) => void choose(event.target.files)}
      />
      {done === '' ? null : <p role="status">{done}</p>}
      {problems.length === 0 ? null : (
        <div className="problems" role="alert">
          <p>
            {csv === null ? 'Left out:' : 'Nothing was taken in yet.'} {problems.length}{' '}
            {problems.length === 1 ? 'mistake' : 'mistakes'}:
          </p>
          <ul className="mistakes">
            {problems.slice(0, mistakesShown).map((one) => (
              <Mistake key={`${one.where} ${one.code} ${one.what}`} one={one} />
            ))}
          </ul>
          {problems.length <= mistakesShown ? null : (
            <Fold title={`The other ${problems.length - mistakesShown}`}>
              <ul className="mistakes">
                {problems.slice(mistakesShown).map((one) => (
                  <Mistake key={`${one.where} ${one.code} ${one.what}`} one={one} />
                ))}
              </ul>
            </Fold>
          )}
          {csv === null || !problems.every(({ where }) => /^row (?!1\b)/.test(where)) ? null : (
            <Button className="key" isDisabled={busy} onPress={() => void leaveOut()}>
              Leave out the wrong rows
            </Button>
          )}
        </div>
      )}
    </section>
  )
}

const Mistake = ({ one }: { readonly one: Problem }) => (
  <li>
    {one.where === '' ? null : <b>{one.where}:</b>} {one.what}. {one.mend}.
  </li>
)

const useImport = (bench: BenchId) => {
  const fresh = useFreshBooks(bench)
  const input = useRef<HTMLInputElement>(null)
  const [busy, setBusy] = useState(false)
  /** The file that waits to be mended, or for its wrong rows to be left out. */
  const [csv, setCsv] = useState<string | null>(null)
  const [problems, setProblems] = useState<readonly Problem[]>([])
  const [done, setDone] = useState('')
  const take = async (text: string, leaveOutWrong: boolean): Promise<void> => {
    setBusy(true)
    const answer = await importBooks(bench, text, leaveOutWrong)
    setBusy(false)
    if (answer.kind === 'refused') {
      setCsv(text)
      setDone('')
      return setProblems(answer.problems)
    }
    const { imported, already, leftOut, unread } = answer.value
    setCsv(null)
    setProblems(leftOut)
    const words = [
      `Taken in: ${imported}.`,
      already === 0 ? '' : `There already: ${already}.`,
      unread.length === 0 ? '' : `Not read: ${unread.join(', ')}.`,
    ]
    setDone(words.filter((one) => one !== '').join(' '))
    say(`Taken in: ${imported}.`)
    await fresh()
  }
  const choose = async (files: FileList | null): Promise<void> => {
    const file = files?.[0]
    if (file === undefined) return
    await take(await file.text(), false)
    // The same file can be chosen again once it is mended.
    if (input.current !== null) input.current.value = ''
  }
  const leaveOut = (): Promise<void> => (csv === null ? Promise.resolve() : take(csv, true))
  return { choose, input, busy, csv, problems, done, leaveOut }
}
