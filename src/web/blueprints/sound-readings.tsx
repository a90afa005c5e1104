import type { Blueprint } from '../../blueprint/schema.ts'
import { useSoundReadings } from './use-engine-answers.ts'

/** What each meter check reads when nothing is wrong. */
export const SoundReadings = ({ blueprint }: { readonly blueprint: Blueprint }) => {
  const { data: readings, error } = useSoundReadings(blueprint)
  return (
    <section className="panel" aria-label="What a sound machine reads">
      <h2>What a sound machine reads</h2>
      <p className="quiet">
        Plug out of the socket for every one. Nine sound machines in ten, with the plate above, lie within.
      </p>
      {error === null ? null : <p>Could not be worked out: {error.message}</p>}
      {readings === undefined && error === null ? <p className="quiet">Working out the readings …</p> : null}
      {readings === undefined ? null : (
        <table className="readings">
          <thead>
            <tr>
              <th scope="col">Meter check</th>
              <th scope="col">Reads</th>
            </tr>
          </thead>
          <tbody>
            {readings.map(({ check, name, text }) => (
              <tr key={check}>
                <th scope="row">{name}</th>
                <td>{text}</td>
              </tr>
            ))}
          </tbody>
        </table>
      )}
    </section>
  )
}
