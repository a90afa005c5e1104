import { useEffect, useRef } from 'react'
import { Button } from 'react-aria-components/Button'
import type { Problem } from '../../base/problem.ts'
import { plateText, type BlueprintEntry } from '../../blueprint/entry.ts'
import { Outline } from '../blueprints/outline.tsx'
import { Pick } from '../blueprints/pick.tsx'
import type { Choice } from '../blueprints/pictures.tsx'
import { Problems } from '../parts/problems.tsx'
import { Fold } from '../parts/fold.tsx'
import { Link } from '../router.tsx'
import type { Draft } from './draft.ts'
import '../style/blueprints.css'

/** What of a draft is about the kind. */
type Picked = { readonly [Field in 'replies' | 'blueprint' | 'name']: Draft[Field] }

type WhichProps = {
  readonly entries: readonly BlueprintEntry[]
  readonly draft: Picked
  readonly change: (part: Partial<Picked>) => void
  readonly problems: readonly Problem[]
}

/** The architecture: picked by questions or from the pictures; then what was picked, and the way back. */
export const WhichMachine = ({ entries, draft, change, problems }: WhichProps) => {
  const chosen = entries.find(({ id }) => id === draft.blueprint)
  const { frame, willMove } = useFocusOnChange(draft.blueprint)
  const choose: Choice = ({ entry, className, children }) => {
    const take = (): void => {
      willMove()
      change({ blueprint: entry.id, name: draft.name.trim() === '' ? entry.name : draft.name })
    }
    return (
      <Button className={className} onPress={take}>
        {children}
      </Button>
    )
  }
  const another = (): void => {
    willMove()
    // A name that nobody typed goes with its blueprint.
    change({ blueprint: '', name: draft.name === chosen?.name ? '' : draft.name })
  }
  return (
    <div ref={frame}>
      {chosen === undefined ? (
        <Pick
          entries={entries}
          replies={draft.replies}
          onReplies={(replies) => change({ replies })}
          choice={choose}
          problem={problems.length === 0 ? undefined : <Problems problems={problems} />}
        />
      ) : (
        <section aria-label="Blueprint">
          <Chosen entry={chosen} another={entries.length > 1 ? another : null} />
          <Recognise entry={chosen} />
        </section>
      )}
    </div>
  )
}

/** Choosing takes the pressed button away: the focus then goes to the heading of what comes in its place. */
const useFocusOnChange = (blueprint: string) => {
  const frame = useRef<HTMLDivElement>(null)
  const moves = useRef(false)
  useEffect(() => {
    if (moves.current) frame.current?.querySelector('h2')?.focus()
    moves.current = false
  }, [blueprint])
  return { frame, willMove: () => void (moves.current = true) }
}

type ChosenProps = { readonly entry: BlueprintEntry; readonly another: (() => void) | null }

const Chosen = ({ entry, another }: ChosenProps) => (
  <div className="chosen">
    <Outline entry={entry} />
    <div>
      <h2 tabIndex={-1}>{entry.name}</h2>
      <span className="quiet">{plateText(entry.plate)}</span>{' '}
      {another === null ? null : (
        <Button className="plain" onPress={another}>
          Choose another
        </Button>
      )}
    </div>
  </div>
)

const Recognise = ({ entry }: { readonly entry: BlueprintEntry }) => (
  <Fold title="How to know one">
    <p>{entry.summary}</p>
    <ul>
      {entry.recognise.map((mark) => (
        <li key={mark}>{mark}</li>
      ))}
    </ul>
    <Link to={{ kind: 'blueprint', id: entry.id }} className="on-its-own">
      The whole blueprint
    </Link>
  </Fold>
)
