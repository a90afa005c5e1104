import { Button } from 'react-aria-components/Button'
import type { Fault } from '../../blueprint/schema.ts'
import type { SuspectView } from '../../machine/view.ts'
import { rateText } from '../blueprints/of-part.ts'
import { Fold } from '../parts/fold.tsx'
import { Problems } from '../parts/problems.tsx'
import { useNotes } from '../use-notes.ts'
import { factorText, percentText } from '../words.ts'
import { notExplained } from './not-explained.ts'
import { useSheet } from './sheet.ts'

/** What may be wrong, how likely, and why. */
export const Suspects = () => {
  const { view, stale } = useSheet()
  if (view === null) return null
  return (
    <section className="panel" aria-label="Suspects" aria-busy={stale}>
      <h2>What may be wrong</h2>
      <p className="quiet">Chance that each is there. Several can be at once.</p>
      <SuspectList suspects={view.suspects.slice(0, firstShown)} />
      {view.suspects.length <= firstShown ? null : (
        <Fold title={`${view.suspects.length - firstShown} more`}>
          <SuspectList suspects={view.suspects.slice(firstShown)} />
        </Fold>
      )}
      <Fold title="Exactly which together">
        <ul className="suspects">
          {view.together.map((set) => (
            <li key={set.id} className="together">
              <span className="suspect-name">{set.name}</span>{' '}
              <span className="figure">{percentText(set.probability)}</span>
            </li>
          ))}
        </ul>
      </Fold>
    </section>
  )
}

/** The rest is one tap away, so that the bench notes are not buried. */
const firstShown = 6

const SuspectList = ({ suspects }: { readonly suspects: readonly SuspectView[] }) => (
  <ul className="suspects">
    {suspects.map((suspect) => (
      <li key={suspect.id}>
        <Suspect suspect={suspect} />
      </li>
    ))}
  </ul>
)

const Suspect = ({ suspect }: { readonly suspect: SuspectView }) => (
  <Fold
    className="suspect"
    title={
      <>
        <span className="suspect-name">{suspect.name}</span>{' '}
        <span className="figure">{percentText(suspect.probability)}</span>
        <span className="bar" aria-hidden="true">
          <span style={{ width: `${suspect.probability * 100}%` }} />
        </span>
      </>
    }
  >
    <Why suspect={suspect} />
  </Fold>
)

const Why = ({ suspect }: { readonly suspect: SuspectView }) => {
  const { blueprint, document, view } = useSheet()
  const open = notExplained(suspect, document.state.claimed.complaints, view?.suspects ?? [], blueprint)
  const faults = suspect.faults.flatMap((id) => blueprint.faults.filter((fault) => fault.id === id))
  return (
    <div className="why">
      {faults.length === 0 ? (
        <p>Every part as it should be; the complaint then has another cause, such as the socket or how it was used.</p>
      ) : null}
      {faults.map((fault) => (
        <FaultGrounds key={fault.id} fault={fault} rate={suspect.rate} />
      ))}
      {faults.length === 0 ? null : <GroundList grounds={suspect.grounds} />}
      {open === null ? null : (
        <p className="quiet">
          It does not account for “{open.complaint}”. That is the seller’s word, no proof, and it still counts: for what
          causes it, beside this.
        </p>
      )}
    </div>
  )
}

const GroundList = ({ grounds }: { readonly grounds: SuspectView['grounds'] }) => (
  <>
    <h3>What it rests on</h3>
    {grounds.length === 0 ? (
      <p>Only how often such faults come up: nothing noted so far speaks for or against it.</p>
    ) : (
      <ul>
        {grounds.map((ground) => (
          <li key={ground.note ?? ground.text}>
            {ground.text}: <strong>{factorText(ground.factor)}</strong>
          </li>
        ))}
      </ul>
    )}
  </>
)

const FaultGrounds = ({ fault, rate }: { readonly fault: Fault; readonly rate: SuspectView['rate'] }) => {
  const { bench, document } = useSheet()
  const { write, busy, problems } = useNotes(bench, document.state.id)
  const confirmed = document.state.confirmed.some((one) => one.fault === fault.id)
  return (
    <>
      <h3>{fault.name}</h3>
      <p>{fault.how}</p>
      {fault.danger === undefined ? null : <p className="caution">{fault.danger}</p>}
      {rate === null ? null : (
        <p className="quiet">
          How often: {rateText(rate).replace(/^A/, 'a')}.
          {rate.shifts.length === 0 ? null : ` Shifted for this machine: ${rate.shifts.join('; ')}.`} Rests on:{' '}
          {rate.sources.join('; ')}.
        </p>
      )}
      {confirmed ? (
        <p>Seen for certain.</p>
      ) : (
        <Button
          className="plain"
          isDisabled={busy}
          aria-label={`Seen for certain: ${fault.name}`}
          onPress={() => void write([{ kind: 'confirmed', fault: fault.id }])}
        >
          Seen for certain
        </Button>
      )}
      <Problems problems={problems} />
    </>
  )
}
