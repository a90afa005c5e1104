import { useState } from 'react'
import { Button } from 'react-aria-components/Button'
import type { BenchId } from '../../bench/contract.ts'
import type { SaleSheetView } from '../../bench/sale/sheet-view.ts'
import { say } from '../parts/live.tsx'
import { sheetAddress } from './use-sale-sheet.ts'

/** The sheet to copy, to print and to hand on. */
export const TakeAway = ({
  bench,
  machine,
  view,
}: {
  readonly bench: BenchId
  readonly machine: string
  readonly view: SaleSheetView
}) => {
  const address = `/api${sheetAddress(bench, machine)}`
  const name = fileName(view)
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
      <p role="status" className={view.unsupported === 0 ? 'quiet' : 'sale-warning'}>
        {claimWords(view)}
      </p>
      {view.ownWords === 0 ? null : <p className="quiet">{ownWords(view.ownWords)}</p>}
      <div className="sale-keys">
        <Button className="key main" onPress={() => void copy()}>
          Copy the text
        </Button>
        <a className="on-its-own" href={`${address}.txt`} {...besides}>
          Text
        </a>
        <a className="on-its-own" href={`${address}.pdf`} {...besides}>
          PDF
        </a>
        <a className="on-its-own" href={`${address}.html`} {...besides}>
          Page with its photographs
        </a>
        <a className="on-its-own" href={`${address}.pdf`} download={`${name}.pdf`}>
          Keep the PDF as a file
        </a>
        <a className="on-its-own" href={`${address}.html`} download={`${name}.html`}>
          Keep the page as a file
        </a>
      </div>
      {copied === '' ? null : <p>{copied}</p>}
    </section>
  )
}

/** Beside this page, which stays as it is. */
const besides = { target: '_blank', rel: 'noreferrer' } as const

const claimWords = ({ found, unsupported }: SaleSheetView): string => {
  if (unsupported > 0)
    return `${unsupported === 1 ? 'One claim is' : `${unsupported} claims are`} not borne out by the notes. What goes out bears a † there.`
  const counted =
    found === 0
      ? 'No claims found'
      : found === 1
        ? 'One claim found, borne out by the notes'
        : `${found} claims found, all borne out by the notes`
  return `${counted}. What is in your own words besides is yours.`
}

const ownWords = (count: number): string =>
  `${count === 1 ? 'One thing is' : `${count} things are`} in your own words, and no note speaks of ${count === 1 ? 'it' : 'them'}. What goes out bears a ‡ there.`

/** By the title, as the buyer may get the file. */
const fileName = ({ sections }: SaleSheetView): string => {
  const title = sections.find(({ section }) => section === 'title')?.text ?? ''
  const words = title.toLowerCase().match(/[\p{L}\d]+/gu) ?? []
  return ['sale-sheet', ...words.slice(0, 8)].join('-')
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
