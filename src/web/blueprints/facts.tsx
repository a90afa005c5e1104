import type { ReactNode } from 'react'
import type { Blueprint } from '../../blueprint/schema.ts'
import { coversToOpen } from '../machine/cover-steps.ts'
import { minutesText } from '../words.ts'

/** One named fact: its name above its words on a phone, beside them where there is room. */
export const Fact = ({ name, children }: { readonly name: string; readonly children: ReactNode }) => (
  <div>
    <dt>{name}</dt>
    <dd>{children}</dd>
  </div>
)

type CoversProps = { readonly blueprint: Blueprint; readonly wanted: readonly string[] }

/** The covers to take off from a closed machine, in order, with minutes and fixings. */
export const CoversInOrder = ({ blueprint, wanted }: CoversProps) => {
  const steps = coversToOpen(blueprint, [], wanted)
  if (steps.length === 0) return <>No cover in the way.</>
  const minutes = steps.reduce((sum, step) => sum + step.minutes, 0)
  return (
    <>
      <ol>
        {steps.map((step) => (
          <li key={step.id}>
            {step.name}, {minutesText(step.minutes)}
            {step.fixings === '' ? null : `: ${step.fixings}`}.
            {step.hint === null ? null : <span className="quiet"> {step.hint}</span>}
          </li>
        ))}
      </ol>
      {steps.length > 1 ? <span className="quiet">{minutesText(minutes)} in all.</span> : null}
    </>
  )
}
