import { useState } from 'react'
import type { BenchId, MachineState } from '../../bench/contract.ts'
import type { WhatToAsk } from '../../bench/prices/what-to-ask.ts'
import type { ImprovementId } from '../../facts/asking.ts'
import type { AskingChoices } from '../../machine/asking-choices.ts'
import { Counted } from '../asking/counted.tsx'
import { DaysToSellPanel } from '../asking/days-to-sell.tsx'
import { Improvements } from '../asking/improvements.tsx'
import { ListedForm } from '../asking/listed-form.tsx'
import { PriceHead } from '../asking/price-head.tsx'
import { PriceSeenForm } from '../asking/price-seen-form.tsx'
import { Terms } from '../asking/terms.tsx'
import { Fold } from '../parts/fold.tsx'
import { Loading } from '../parts/loading.tsx'
import { useMachine } from '../queries.ts'
import { Link, PageTitle } from '../router.tsx'
import { useAsking } from '../use-market.ts'
import '../style/asking.css'

/** What to ask for one machine, and why. */
export const AskingPage = ({ bench, id }: { readonly bench: BenchId; readonly id: string }) => {
  const { data: machine, error } = useMachine(bench, id)
  const [choices, setChoices] = useState<Partial<AskingChoices>>({})
  const asked = useAsking(bench, id, machine?.state.version, choices)
  const name = machine?.state.name
  const title = name === undefined ? 'What to ask' : `${name}: what to ask`
  return (
    <div className="sheet machine">
      <div className="machine-title">
        <PageTitle windowTitle={title}>{title}</PageTitle>
        <Link to={{ kind: 'machine', bench, id }} className="on-its-own">
          Back to the machine
        </Link>
        {machine === undefined || asked.data === undefined ? (
          <Loading what="what it would fetch" error={error ?? asked.error} />
        ) : null}
      </div>
      {machine === undefined || asked.data === undefined ? null : (
        <Sheet
          bench={bench}
          state={machine.state}
          asked={asked.data}
          // What was ticked shows at once; the figures follow.
          wanted={{ ...asked.data.asking.choices, ...choices }}
          stale={asked.isPlaceholderData}
          onChange={(change) => setChoices((before) => ({ ...before, ...change }))}
        />
      )}
    </div>
  )
}

type SheetProps = {
  readonly bench: BenchId
  readonly state: MachineState
  readonly asked: WhatToAsk
  readonly wanted: AskingChoices
  readonly stale: boolean
  readonly onChange: (change: Partial<AskingChoices>) => void
}

const Sheet = ({ bench, state, asked, wanted, stale, onChange }: SheetProps) => {
  const { asking } = asked
  const hasLeft = state.left !== null
  return (
    <>
      <div className="machine-left" aria-busy={stale}>
        <PriceHead bench={bench} machine={state.id} asking={asking} hasLeft={hasLeft} />
        <Terms asking={{ ...asking, choices: wanted }} onChange={onChange} />
        <Improvements
          asking={asking}
          isOn={(id) => isTicked(wanted, id)}
          onTick={(id, on) => onChange(ticked(wanted, id, on))}
        />
        {hasLeft ? null : (
          <section className="panel" aria-label="Offered">
            <h2>Offered</h2>
            <ListedForm bench={bench} state={state} asking={asking} />
          </section>
        )}
      </div>
      <div className="machine-right" aria-busy={stale}>
        <DaysToSellPanel asking={asking} />
        <Counted bench={bench} {...asked} />
        <section className="panel" aria-label="A price you saw">
          <Fold title="A price seen">
            <PriceSeenForm bench={bench} state={state} today={new Date().toISOString().slice(0, 10)} />
          </Fold>
        </section>
        <section className="panel" aria-label="What this rests on">
          <Fold title="What this rests on">
            <ul>
              {asking.restsOn.map((text) => (
                <li key={text}>{text}.</li>
              ))}
            </ul>
            <h3>Sources</h3>
            <ul>
              {asking.sources.map((source) => (
                <li key={source}>{source}</li>
              ))}
            </ul>
          </Fold>
        </section>
      </div>
    </>
  )
}

const partStart = 'part:'

const isTicked = ({ found, done }: AskingChoices, id: string): boolean =>
  id.startsWith(partStart) ? found.includes(id.slice(partStart.length)) : done.some((one) => one === id)

/** The choices with one thing ticked or not. */
const ticked = (choices: AskingChoices, id: string, on: boolean): Partial<AskingChoices> => {
  if (id.startsWith(partStart)) {
    const part = id.slice(partStart.length)
    const others = choices.found.filter((one) => one !== part)
    return { found: on ? [...others, part] : others }
  }
  const others = choices.done.filter((one) => one !== id)
  return { done: on ? [...others, id as ImprovementId] : others }
}
