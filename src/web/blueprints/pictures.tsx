import type { ReactNode } from 'react'
import { Button } from 'react-aria-components/Button'
import { plateText, type BlueprintEntry } from '../../blueprint/entry.ts'
import type { Kind } from './kinds.ts'
import { Outline } from './outline.tsx'

/** How an entry on a picture list is chosen: a link to it, or a button. */
export type Choice = (props: {
  readonly entry: BlueprintEntry
  readonly className: string
  readonly children: ReactNode
}) => ReactNode

type PicturesProps = {
  readonly kinds: readonly Kind[]
  readonly choice: Choice
  /** Answers that speak against an entry, by its id. */
  readonly against: ReadonlyMap<string, string>
  /** Told when a kind of several plates is chosen among other kinds. */
  readonly onKind: (kind: Kind) => void
}

/** Kinds of machine to choose from by how they look; where several look alike, by their rating plates. */
export const Pictures = ({ kinds, choice, against, onKind }: PicturesProps) => (
  <ul className={kinds.length === 1 ? 'pictures alone' : 'pictures'} aria-label="Blueprints">
    {kinds.map((kind) => (
      <li key={kind.entries[0].id} className="picture-card">
        {kinds.length > 1 && kind.entries.length > 1 ? (
          <KindCard kind={kind} onKind={onKind} />
        ) : (
          <Card kind={kind} choice={choice} />
        )}
        {against.has(kind.entries[0].id) ? (
          <p className="against">Against it: {against.get(kind.entries[0].id)}</p>
        ) : null}
        {kinds.length === 1 ? <Marks entry={kind.entries[0]} /> : null}
      </li>
    ))}
  </ul>
)

/** A kind among others: its plates are asked for once it is chosen. */
const KindCard = ({ kind, onKind }: { readonly kind: Kind; readonly onKind: (kind: Kind) => void }) => (
  <Button className="picture" onPress={() => onKind(kind)}>
    <strong>{kind.name}</strong> <span className="quiet">{kind.entries.length} rating plates</span>{' '}
    <Outline entry={kind.entries[0]} />
  </Button>
)

const Card = ({ kind, choice }: { readonly kind: Kind; readonly choice: Choice }) => {
  const [first] = kind.entries
  if (kind.entries.length === 1)
    return choice({
      entry: first,
      className: 'picture',
      children: (
        <>
          <strong>{kind.name}</strong> <span className="quiet">{plateText(first.plate)}</span> <Outline entry={first} />
        </>
      ),
    })
  return (
    <div className="picture">
      <strong>{kind.name}</strong>
      <Outline entry={first} />
      <ul className="variants" aria-label={`${kind.name}, by rating plate`}>
        {kind.entries.map((entry, k) => (
          <li key={entry.id}>
            {choice({
              entry,
              className: 'variant',
              children: (
                <>
                  <span className="unseen">{kind.name}, </span>
                  {kind.labels[k]}
                </>
              ),
            })}
          </li>
        ))}
      </ul>
    </div>
  )
}

const Marks = ({ entry }: { readonly entry: BlueprintEntry }) => (
  <div className="known-by">
    <p>{entry.summary}</p>
    <h3>How to know one</h3>
    <ul className="known-marks">
      {entry.recognise.map((mark) => (
        <li key={mark}>{mark}</li>
      ))}
    </ul>
  </div>
)
