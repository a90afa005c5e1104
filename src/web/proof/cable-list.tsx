import { Button } from 'react-aria-components/Button'
import { inSentence } from '../../base/in-sentence.ts'
import type { LeadChoice, ListedCable } from '../../engines/limits/index.ts'
import { capital } from '../words.ts'
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
          <span>{capital(cableText(cable))}</span>
          <Button
            className="plain strike"
            aria-label={`Take off the list: ${cableText(cable)}`}
            onPress={() => onCables(cables.filter(({ id }) => id !== cable.id))}
          >
            take off
          </Button>
          <Fit fit={fits.find(({ id }) => id === cable.id)} />
        </li>
      ))}
    </ul>
    <CableForm onAdd={(cable) => onCables([...cables, cable])} />
  </>
)

const Fit = ({ fit }: { readonly fit: CableFit | undefined }) =>
  fit === undefined ? null : (
    <span className={`cable-fit ${fit.kind}`}>
      <strong>{capital(fitNames[fit.kind])}</strong>
      {wordsOf(fit).map((text) => (
        <span key={text}>{text}.</span>
      ))}
    </span>
  )

/** Why not, where that is sure; else what to find out first, and how to use it. */
const wordsOf = ({ kind, reasons, unknown, care }: CableFit): readonly string[] =>
  kind === 'would-not-do' ? reasons : [...unknown.map((what) => `To find out: ${inSentence(what)}`), ...care]
