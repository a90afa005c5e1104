import type { BlueprintEntry } from '../api.ts'
import { Sketch } from '../blueprints/sketch.tsx'
import { Loading } from '../parts/loading.tsx'
import { useBlueprint, useBlueprints } from '../queries.ts'
import { Link, PageTitle } from '../router.tsx'
import '../style/blueprints.css'

/** The architectures that are known here, and how to know one. */
export const BlueprintsPage = () => {
  const { data: blueprints, error } = useBlueprints()
  return (
    <div className="sheet">
      <PageTitle windowTitle="Blueprints">Blueprints</PageTitle>
      <p className="quiet">Kinds of machine that are known here. A blueprint holds for all makes built this way.</p>
      {blueprints === undefined ? (
        <Loading what="the blueprints" error={error} />
      ) : (
        <ul className="ledger" aria-label="Blueprints">
          {blueprints.map((entry) => (
            <Entry key={entry.id} entry={entry} />
          ))}
        </ul>
      )}
    </div>
  )
}

const Entry = ({ entry }: { readonly entry: BlueprintEntry }) => {
  const { data: blueprint, error } = useBlueprint(entry.id)
  return (
    <li className="known">
      <Link to={{ kind: 'blueprint', id: entry.id }} className="ledger-line">
        <strong className="ledger-name">{entry.name}</strong>
      </Link>
      <p>{entry.summary}</p>
      {blueprint === undefined ? (
        <Loading what="its marks" error={error} />
      ) : (
        <div className="known-by">
          <Sketch blueprint={blueprint} />
          <div>
            <h2>How to know one</h2>
            <ul className="marks">
              {blueprint.recognise.map((mark) => (
                <li key={mark}>{mark}</li>
              ))}
            </ul>
          </div>
        </div>
      )}
    </li>
  )
}
