import type { BlueprintEntry } from '../../blueprint/entry.ts'
import { Link } from '../router.tsx'
import { OpenFile } from './open-file.tsx'
import { isOwn } from './origin.tsx'

/** Blueprints of one's own by name, and the way to take another one in from a file. */
export const OwnBlueprints = ({ entries }: { readonly entries: readonly BlueprintEntry[] }) => {
  const own = entries.filter(({ id }) => isOwn(id))
  return (
    <section className="panel" aria-label="Your own">
      <h2>Your own</h2>
      {own.length === 0 ? (
        <p className="quiet">None yet. Adapt one above, or open a file that holds one.</p>
      ) : (
        <ul className="own-blueprints">
          {own.map(({ id, name }) => (
            <li key={id}>
              <Link to={{ kind: 'blueprint', id }}>{name}</Link> <span className="quiet">{revisionText(id)}</span>
            </li>
          ))}
        </ul>
      )}
      <OpenFile />
    </section>
  )
}

/** The number at the end of an id: which of those saved under the name it is. */
const revisionText = (id: string): string => {
  const revision = /-(\d+)$/.exec(id)?.[1]
  return revision === undefined || revision === '1' ? '' : `no. ${revision} of this name`
}
