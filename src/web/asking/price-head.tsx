import { lazy, Suspense } from 'react'
import { Button } from 'react-aria-components/Button'
import { moneyText } from '../../base/money.ts'
import type { BenchId } from '../../bench/contract.ts'
import type { AskingView } from '../../machine/asking.ts'
import { Fold } from '../parts/fold.tsx'
import { say } from '../parts/live.tsx'
import { Money } from '../parts/money.tsx'
import { Problems } from '../parts/problems.tsx'
import { useNotes } from '../use-notes.ts'

const DensityPicture = lazy(async () => ({ default: (await import('./density-picture.tsx')).DensityPicture }))

type PriceHeadProps = {
  readonly bench: BenchId
  readonly machine: string
  readonly asking: AskingView
  readonly hasLeft: boolean
}

/** The price, large, with its band and what it rests on. */
export const PriceHead = ({ bench, machine, asking, hasLeft }: PriceHeadProps) => {
  const { currency, askMinor, sale, typical, floor } = asking
  const money = (minor: number): string => moneyText(minor, currency)
  return (
    <section className="panel asking-head" aria-label="The price">
      <p className="asking-price">
        <span className="quiet">Ask</span> <strong className="figure">{money(askMinor)}</strong>
      </p>
      <p>
        Nine sales in ten bring {money(sale.lowMinor)} to {money(sale.highMinor)}, half of them more than{' '}
        {money(sale.medianMinor)}.
      </p>
      <p className="asking-rests">{restsText(asking)}</p>
      <Suspense fallback={<p className="quiet">Drawing …</p>}>
        <DensityPicture
          asking={asking}
          description={`What one sale would bring: nine in ten ${money(sale.lowMinor)} to ${money(sale.highMinor)}.`}
        />
      </Suspense>
      <p className="hint">
        {currency}; the filled part holds nine sales in ten. The middle itself lies between {money(typical.lowMinor)}{' '}
        and {money(typical.highMinor)}: more sales narrow that, not the spread of a single one.
      </p>
      <Fold title={<FloorTitle asking={asking} />}>
        <ul className="asking-floor">
          {floor.parts.map(({ name, minor }) => (
            <li key={name}>
              <span>{name}</span>
              <Money minor={minor} currency={currency} />
            </li>
          ))}
        </ul>
      </Fold>
      {hasLeft ? null : <Reckon bench={bench} machine={machine} asking={asking} />}
    </section>
  )
}

const FloorTitle = ({ asking: { floor, currency } }: { readonly asking: AskingView }) => (
  <>
    Below <Money minor={floor.minor} currency={currency} /> it costs more than it brings
  </>
)

const restsText = ({ own, seen }: AskingView): string => {
  if (own + seen === 0) return "No sale to compare with yet: this is the blueprint's range alone, so the band is wide."
  const sales = own === 0 ? [] : [own === 1 ? '1 of your sales' : `${own} of your sales`]
  const prices = seen === 0 ? [] : [seen === 1 ? '1 price you entered' : `${seen} prices you entered`]
  return `From ${[...sales, ...prices].join(' and ')}.`
}

const Reckon = ({ bench, machine, asking }: Omit<PriceHeadProps, 'hasLeft'>) => {
  const { write, busy, problems } = useNotes(bench, machine)
  const { reckonMinor, currency } = asking
  const note = async (): Promise<void> => {
    const content = { kind: 'valued' as const, workingMinor: reckonMinor, text: 'From What to ask' }
    if (await write([content])) say('Noted. The plan reckons with it.')
  }
  return (
    <>
      <Button className="key asking-reckon" onPress={() => void note()} isDisabled={busy}>
        Reckon with {moneyText(reckonMinor, currency)}
      </Button>
      {asking.completenessShare < 1 ? <p className="hint">The plan takes what is missing off by itself.</p> : null}
      <Problems problems={problems} />
    </>
  )
}
