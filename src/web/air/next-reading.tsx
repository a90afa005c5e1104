import { Button } from 'react-aria-components/Button'
import { sealedTime } from '../../facts/air-rig.ts'
import type { NextGaugeView } from '../../machine/air/air-view.ts'
import { Fold } from '../parts/fold.tsx'
import { Link } from '../router.tsx'
import { capital, minutesText } from '../words.ts'
import { useAirSheet } from './air-sheet.ts'
import { inGaugeUnits } from './gauge-units.ts'
import { placeOf, type Place } from './place.ts'
import { ReadingEntry } from './reading-entry.tsx'
import { setUpName } from './set-up-name.ts'
import { SetUpChoice } from './set-up-choice.tsx'
import { useDraft, type Draft } from './use-draft.ts'

/** The one reading to make, large: what, how to set up, what it would show, and the place to enter it. */
export const NextReading = () => {
  const { stale, barred, document } = useAirSheet()
  const draft = useDraft()
  const mayRun = barred.length === 0 && document.state.off.length === 0
  const isBest = draft.isBest && mayRun
  return (
    <section
      className={isBest ? 'move best' : 'move'}
      aria-label={draft.isBest ? 'Next reading' : 'Chosen reading'}
      aria-busy={stale}
    >
      <header className="move-head">
        <p className="move-stamp">{stale ? 'Working it out …' : stampOf(draft)}</p>
        <Heading draft={draft} />
      </header>
      {mayRun ? <Reading draft={draft} /> : <NotYet />}
    </section>
  )
}

/** With no best there is still a place to enter a reading: it is nobody's choice until it is changed. */
const stampOf = ({ isBest, isChosen }: Draft): string => {
  if (isBest) return 'Next reading'
  return isChosen ? 'Your choice' : 'Another reading'
}

const Heading = ({ draft: { known, place } }: { readonly draft: Draft }) => {
  const sheet = useAirSheet()
  return (
    <>
      <h2>{known?.name ?? capital(setUpName(place, sheet.air.ways))}</h2>
      {known === null ? null : (
        <p className="move-figures">
          <strong className="figure">{minutesText(known.minutes)}</strong>
        </p>
      )}
    </>
  )
}

/** What stands in the way of running it. Nothing is entered until it is out of the way. */
const NotYet = () => {
  const { barred, document, blueprint, bench } = useAirSheet()
  const off = document.state.off.map((id) => blueprint.covers.find((cover) => cover.id === id)?.name ?? id)
  return (
    <div className="caution" role="group" aria-label="Not to be run yet">
      <p>A gauge reads the running machine, and this one must not be run yet.</p>
      {off.length === 0 ? null : <p>Covers to put back first: {off.join(', ')}.</p>}
      {barred.length === 0 ? null : (
        <>
          <p>With the plug out, these have to be passed first:</p>
          <ul>
            {barred.map((name) => (
              <li key={name}>{name}</li>
            ))}
          </ul>
        </>
      )}
      <p>
        <Link to={{ kind: 'machine', bench, id: document.state.id }} className="on-its-own">
          Make them on the machine’s page
        </Link>
      </p>
    </div>
  )
}

const Reading = ({ draft }: { readonly draft: Draft }) => {
  const { air } = useAirSheet()
  const way = air.ways.find(({ id }) => id === draft.place.way)
  return (
    <>
      <Others draft={draft} />
      {draft.known === null ? null : <p className="move-why">{draft.known.tells}</p>}
      {way === undefined ? null : <p>{way.how}</p>}
      {(draft.known?.how ?? []).map((text) => (
        <p key={text}>{text}</p>
      ))}
      <Cautions place={draft.place} />
      <SetUpChoice draft={draft} />
      {draft.known === null ? null : <Expected known={draft.known} />}
      <ReadingEntry draft={draft} />
    </>
  )
}

/** Back to the best when another was chosen; else the others that would tell something. */
const Others = ({ draft }: { readonly draft: Draft }) => {
  const { air } = useAirSheet()
  const [best, ...others] = air.next
  if (best !== undefined && !draft.isBest)
    return (
      <div className="move-instead">
        <p>The most telling one now: {best.name}.</p>
        <Button className="plain" onPress={draft.release}>
          Back to that reading
        </Button>
      </div>
    )
  if (best === undefined)
    return <p>No further reading with this rig would tell much more now. Any can still be entered.</p>
  if (others.length === 0) return null
  return (
    <Fold title={`${others.length} other telling ${others.length === 1 ? 'reading' : 'readings'}`}>
      {others.map((one) => (
        <Button key={one.name} className="move-line" onPress={() => draft.setPlace(placeOf(one.reading))}>
          <span className="move-line-name">{one.name}</span>
          <span className="move-line-cost figure">{minutesText(one.minutes)}</span>
        </Button>
      ))}
    </Fold>
  )
}

const Expected = ({ known }: { readonly known: NextGaugeView }) => {
  const { units } = useAirSheet()
  return (
    <dl className="expected" aria-label="What it would show">
      {known.expected.map(({ under, text }) => (
        <div key={under}>
          <dt>{capital(under)}</dt>
          <dd className="figure">{inGaugeUnits(text, units)}</dd>
        </div>
      ))}
    </dl>
  )
}

const Cautions = ({ place }: { readonly place: Place }) => {
  const { rig } = useAirSheet()
  return (
    <div className="caution">
      <ul>
        <li>Rig on and off with the plug out. All covers on, hands, hair and cloth away from the hole.</li>
        {place.opening === 'sealed' ? (
          <li>
            Sealed for at most {sealedTime.longestS} s at a time, then {sealedTime.restS} s open: the air cools the
            motor.
          </li>
        ) : null}
      </ul>
      {rig === null ? null : (
        <Fold title="All cautions of the rig">
          <ul>
            {rig.cautions.map((text) => (
              <li key={text}>{text}</li>
            ))}
          </ul>
        </Fold>
      )}
    </div>
  )
}
