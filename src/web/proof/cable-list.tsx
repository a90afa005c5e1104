import { Button } from 'react-aria-components/Button'
import type { LeadChoice, ListedCable } from '../../engines/limits/index.ts'
import { CableForm } from './cable-form.tsx'
import { cableText } from './cables.ts'

type CableFit = LeadChoice['cables'][number]

type CableListProps = {
  readonly cables: readonly ListedCable[]
  readonly onCables: (cables: readonly ListedCable[]) => void
  /** Whether each would do; empty until a length is given. */
  readonly fits: readonly CableFit[]
}

const fitNames: Readonly<Record<CableFit['kind'], string>> = {
  'would-do': 'would do',
  'would-not-do': 'would not do',
  'not-known': 'not known yet',
}

/** Cables at hand, each with whether it would do and why. */
export const CableList = ({ cables, onCables, fits }: CableListProps) => (
  <>
    <h3 className="proof-cables-head">Cables at hand</h3>
    <ul className="log cables" aria-label="Cables at hand">
      {cables.map((cable) => (
        <li key={cable.id}>
          <span>
            {cableText(cable)}
            <Fit fit={fits.find(({ id }) => id === cable.id)} />
          </span>
          <Button
            className="plain strike"
            aria-label={`Take off the list: ${cableText(cable)}`}
            onPress={() => onCables(cables.filter(({ id }) => id !== cable.id))}
          >
            take off
          </Button>
        </li>
      ))}
    </ul>
    <CableForm onAdd={(cable) => onCables([...cables, cable])} />
  </>
)

const Fit = ({ fit }: { readonly fit: CableFit | undefined }) =>
  fit === undefined ? null : (
    <span className={`cable-fit ${fit.kind}`}>
      <strong>{fitNames[fit.kind]}</strong>
      {[...fit.reasons, ...fit.unknown.map((what) => `To find out: ${what}`), ...fit.care].map((text) => (
        <span key={text}>{text}.</span>
      ))}
    </span>
  )
