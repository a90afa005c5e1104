import { useEffect, useState } from 'react'
import { Button } from 'react-aria-components/Button'
import { filmTime } from '../../base/film-time.ts'
import type { Films } from '../../bench/story/chapters.ts'
import { Field } from '../parts/field.tsx'
import { say } from '../parts/live.tsx'

/** The chapters of each film, and a text of them to copy. */
export const ChapterList = ({ films, text }: { readonly films: Films; readonly text: string }) => {
  if (films.films.length === 0) return null
  return (
    <section className="panel" aria-label="Chapters">
      <h2>Chapters</h2>
      {films.films.map(({ name, chapters }) => (
        <div key={name}>
          {name === '' ? null : <h3 className="film-name">{name}</h3>}
          <ol className="chapters" aria-label={name === '' ? 'Chapters of the film' : `Chapters of ${name}`}>
            {chapters.map(({ atMs, text: words }) => (
              <li key={atMs}>
                <b className="figure">{filmTime(atMs)}</b> {words}
              </li>
            ))}
          </ol>
        </div>
      ))}
      <Copy text={text} />
      <p className="hint">
        Counted while the film clock ran. What was noted less than ten seconds apart is one chapter. A slip is struck
        out in the history of the machine and leaves the list.
      </p>
    </section>
  )
}

/** So long the button says that it is done. */
const copiedMs = 4000

/** Copies where the browser lets a page copy; else the text stands there to be marked. */
const Copy = ({ text }: { readonly text: string }) => {
  const [isShown, setShown] = useState(false)
  const [isCopied, setCopied] = useState(false)
  useEffect(() => {
    if (!isCopied) return undefined
    const timer = window.setTimeout(() => setCopied(false), copiedMs)
    return () => window.clearTimeout(timer)
  }, [isCopied])
  const copy = async (): Promise<void> => {
    try {
      await navigator.clipboard.writeText(text)
      say('Chapters copied.')
      setCopied(true)
    } catch {
      setShown(true)
    }
  }
  return (
    <>
      <Button className="key" onPress={() => void copy()}>
        {isCopied ? 'Copied' : 'Copy the chapters'}
      </Button>
      {isShown ? <Field label="Mark this text and copy it" value={text} onChange={() => undefined} long /> : null}
    </>
  )
}
