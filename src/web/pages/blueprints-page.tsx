import { useState } from 'react'
import type { SignReply } from '../../blueprint/narrow.ts'
import { OwnBlueprints } from '../adapt/own-blueprints.tsx'
import { Pick } from '../blueprints/pick.tsx'
import type { Choice } from '../blueprints/pictures.tsx'
import { repliesFromText } from '../blueprints/stored-replies.ts'
import { Loading } from '../parts/loading.tsx'
import { useBlueprints } from '../queries.ts'
import { Link, PageTitle } from '../router.tsx'
import { readStored, writeStored } from '../stored.ts'
import '../style/blueprints.css'

const storedName = 'thrum-pick'

/** The architectures that are known here, to be picked by questions or by their pictures. */
export const BlueprintsPage = () => {
  const { data: blueprints, error } = useBlueprints()
  const [replies, setReplies] = useState(() => repliesFromText(readStored('session', storedName)))
  const change = (next: readonly SignReply[]): void => {
    setReplies(next)
    writeStored('session', storedName, JSON.stringify(next))
  }
  return (
    <div className="sheet">
      <PageTitle windowTitle="Blueprints">Blueprints</PageTitle>
      <p className="quiet">Kinds of machine that are known here. A blueprint holds for all makes built this way.</p>
      {blueprints === undefined ? (
        <Loading what="the blueprints" error={error} />
      ) : (
        <Pick entries={blueprints} replies={replies} onReplies={change} choice={openIt} />
      )}
      {blueprints === undefined ? null : <OwnBlueprints entries={blueprints} />}
    </div>
  )
}

const openIt: Choice = ({ entry, className, children }) => (
  <Link to={{ kind: 'blueprint', id: entry.id }} className={className}>
    {children}
  </Link>
)
