import { blueprintEntry } from '../../blueprint/entry.ts'
import type { Blueprint } from '../../blueprint/schema.ts'
import { AdaptBlueprint } from '../adapt/adapt-blueprint.tsx'
import { LookAlikesSection } from '../blueprints/look-alikes.tsx'
import { groupedParts } from '../blueprints/of-part.ts'
import { Outline } from '../blueprints/outline.tsx'
import { PartFold } from '../blueprints/part-fold.tsx'
import { SoundReadings } from '../blueprints/sound-readings.tsx'
import { useRates, useShows } from '../blueprints/use-engine-answers.ts'
import { AirRibbon } from '../drawing/air-ribbon.tsx'
import { Drawing } from '../drawing/drawing.tsx'
import { Loading } from '../parts/loading.tsx'
import { useBlueprint } from '../queries.ts'
import { Link, PageTitle } from '../router.tsx'
import '../style/blueprints.css'

/** One architecture, to be read: how to know it, its circuit and air path, every part, what a sound one reads. */
export const BlueprintPage = ({ id }: { readonly id: string }) => {
  const { data: blueprint, error } = useBlueprint(id)
  return (
    <div className="sheet blueprint">
      <Link to={{ kind: 'blueprints' }} className="on-its-own">
        All blueprints
      </Link>
      <PageTitle windowTitle={blueprint?.name ?? 'Blueprint'}>{blueprint?.name ?? 'Blueprint'}</PageTitle>
      {blueprint === undefined ? <Loading what="the blueprint" error={error} /> : <Sheet blueprint={blueprint} />}
    </div>
  )
}

type SheetProps = { readonly blueprint: Blueprint }

/** Nothing is suspected of an architecture. */
const none: Readonly<Record<string, number>> = {}

const Sheet = ({ blueprint }: SheetProps) => (
  <>
    <p>{blueprint.summary}</p>
    <AdaptBlueprint key={blueprint.id} blueprint={blueprint} />
    <section className="panel" aria-label="How to know one">
      <h2>How to know one</h2>
      <div className="sheet-outline">
        <Outline entry={blueprintEntry(blueprint)} />
      </div>
      <ul className="known-marks">
        {blueprint.recognise.map((mark) => (
          <li key={mark}>{mark}</li>
        ))}
      </ul>
    </section>
    <PlateLine blueprint={blueprint} />
    <section className="panel" aria-label="Drawing">
      <h2>Circuit and air path</h2>
      <Drawing blueprint={blueprint} tints={none} off={null} probes={null} />
      <AirRibbon blueprint={blueprint} tints={none} />
    </section>
    <Parts blueprint={blueprint} />
    <SoundReadings blueprint={blueprint} />
    <LookAlikesSection blueprint={blueprint} />
  </>
)

const PlateLine = ({ blueprint: { plate } }: SheetProps) => (
  <section className="panel" aria-label="Rating plate">
    <h2>Rating plate, as usual for the kind</h2>
    <p className="figures">
      {plate.voltageV} V, {plate.frequencyHz} Hz, {plate.powerW} W, class {plate.protectionClass}
      {plate.massKg === undefined ? null : `, ${plate.massKg} kg`}
    </p>
  </section>
)

const Parts = ({ blueprint }: SheetProps) => {
  const answers = { rates: useRates(blueprint), shows: useShows(blueprint) }
  return (
    <section className="panel" aria-label="Parts">
      <h2>Every part</h2>
      <p className="quiet">
        Checks stand the surest first. The figure behind a check: how likely it is this fault once the check shows that,
        on a machine with one fault at most.
      </p>
      {groupedParts(blueprint).map((group) => (
        <div key={group.name} className="part-group">
          <h3>{group.name}</h3>
          {group.parts.map((part) => (
            <PartFold key={part.id} blueprint={blueprint} part={part} answers={answers} />
          ))}
        </div>
      ))}
    </section>
  )
}
