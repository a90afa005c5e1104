import { useQuery } from '@tanstack/react-query'
import type { Blueprint } from '../../blueprint/schema.ts'
import { engine } from '../engine-client.ts'
import '../style/adapt.css'

/** Faults that look alike as long as every cover is on, and what tells them apart. Worked out in the worker. */
export const LookAlikesSection = ({ blueprint }: { readonly blueprint: Blueprint }) => {
  const { data: groups, error } = useQuery({
    queryKey: ['look-alikes', blueprint.id],
    queryFn: async ({ signal }) => (await engine().ask({ kind: 'look-alikes', blueprint }, signal)).groups,
    staleTime: Infinity,
    retry: false,
  })
  return (
    <section className="panel" aria-label="What looks alike">
      <h2>What looks alike from outside</h2>
      {error === null ? null : <p>Could not be worked out: {error.message}</p>}
      {groups === undefined && error === null ? <p className="quiet">Comparing the faults …</p> : null}
      {groups === undefined || groups.length === 0 ? null : (
        <p className="quiet">As long as every cover is on, no check tells these apart.</p>
      )}
      {groups?.length === 0 ? <p>Nothing: each fault shows itself in a check of its own.</p> : null}
      <ul className="look-alikes">
        {groups?.map(({ faults, names, mend }) => (
          <li key={faults.join(' ')}>
            <strong>{names}</strong>
            <p>{mend}</p>
          </li>
        ))}
      </ul>
    </section>
  )
}
