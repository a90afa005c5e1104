import { useState } from 'react'
import type { BenchId, MachineDocument } from '../../bench/contract.ts'
import { OneOf } from '../parts/one-of.tsx'
import { Link } from '../router.tsx'

const choices = [
  { id: 'no', name: 'Without' },
  { id: 'yes', name: 'With' },
] as const

type StoryFileProps = { readonly bench: BenchId; readonly document: MachineDocument }

/** The story as a file: to open, to keep, to send. */
export const StoryFile = ({ bench, document: { state } }: StoryFileProps) => {
  const [money, setMoney] = useState<'yes' | 'no'>('no')
  const address = `/api/bench/${bench}/machines/${encodeURIComponent(state.id)}/story.html?money=${money}`
  return (
    <section className="panel" aria-label="Story">
      <h2>Story</h2>
      <p>
        The whole job in one file: before and after, what was read, found and mended, the air, how it ended. It opens on
        any device without a network, and prints.
      </p>
      <OneOf label="What it cost and brought" options={choices} chosen={money} onChange={setMoney} />
      <p className="page-links">
        <a className="on-its-own" href={address} target="_blank" rel="noreferrer">
          Open the story
        </a>
        <a className="on-its-own" href={address} download={`${state.name}.html`}>
          Keep it as a file
        </a>
      </p>
      <p className="hint">
        Your own words stand in it as you wrote them. Photographs of before and after are large, the others small; add
        some on <Link to={{ kind: 'photos', bench, id: state.id }}>the page of photographs</Link>.
      </p>
    </section>
  )
}
