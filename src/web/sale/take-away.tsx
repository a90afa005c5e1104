import { useState } from 'react'
import { Button } from 'react-aria-components/Button'
import type { BenchId } from '../../bench/contract.ts'
import { say } from '../parts/live.tsx'
import { sheetAddress } from './use-sale-sheet.ts'

/** The sheet to copy, to print and to hand on. */
export const TakeAway = ({
  bench,
  machine,
  unsupported,
}: {
  readonly bench: BenchId
  readonly machine: string
  readonly unsupported: number
}) => {
  const address = `/api${sheetAddress(bench, machine)}`
  const [copied, setCopied] = useState('')
  const copy = async (): Promise<void> => {
    const done = await copyFrom(`${address}.txt`)
    const words = done ? 'Copied.' : 'It could not be copied: open the text and copy it there.'
    setCopied(words)
    say(words)
  }
  return (
    <section className="panel" aria-label="Take it away">
      <h2>Take it away</h2>
      <p role="status" className={unsupported === 0 ? 'quiet' : 'sale-warning'}>
        {unsupported === 0
          ? 'Every claim found in it is borne out by the notes.'
          : `${unsupported === 1 ? 'One claim is' : `${unsupported} claims are`} not borne out by the notes. What goes out bears a † there.`}
      </p>
      <div className="sale-keys">
        <Button className="key main" onPress={() => void copy()}>
          Copy the text
        </Button>
        <a className="on-its-own" href={`${address}.txt`}>
          Text
        </a>
        <a className="on-its-own" href={`${address}.pdf`}>
          PDF
        </a>
        <a className="on-its-own" href={`${address}.html`} download={`sale-sheet-${machine}.html`}>
          Page with its photographs (one file)
        </a>
      </div>
      {copied === '' ? null : <p>{copied}</p>}
    </section>
  )
}

/** A phone that reaches the bench over plain HTTP has no clipboard to write to. */
const copyFrom = async (address: string): Promise<boolean> => {
  try {
    const response = await fetch(address)
    if (!response.ok) return false
    await navigator.clipboard.writeText(await response.text())
    return true
  } catch {
    return false
  }
}
