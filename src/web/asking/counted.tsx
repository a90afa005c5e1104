import { useQueryClient } from '@tanstack/react-query'
import { useState } from 'react'
import { Button } from 'react-aria-components/Button'
import { moneyText } from '../../base/money.ts'
import type { Problem } from '../../base/problem.ts'
import type { BenchId } from '../../bench/contract.ts'
import type { CountedPrice, WhatToAsk } from '../../bench/prices/what-to-ask.ts'
import { Refusal, strikePrice } from '../api.ts'
import { say } from '../parts/live.tsx'
import { Problems } from '../parts/problems.tsx'
import { pricesKey } from '../use-market.ts'
import { dayText, percentText } from '../words.ts'

const levels = { model: 'this very model', kind: 'its kind', class: 'its class' } as const

/** The prices it rests on, what counts most first, and what each counted. */
export const Counted = ({ bench, prices, asking }: { readonly bench: BenchId } & WhatToAsk) => {
  const ordered = prices.toSorted((a, b) => (b.say?.weight ?? 0) - (a.say?.weight ?? 0))
  return (
    <section className="panel" aria-label="Prices it rests on">
      <h2>Prices it rests on</h2>
      {ordered.length === 0 ? (
        <p className="quiet">None yet. Enter one that you saw; your own sales count by themselves.</p>
      ) : (
        <ul className="asking-prices">
          {ordered.map((one) => (
            <Price key={one.id} bench={bench} price={one} currency={asking.currency} />
          ))}
        </ul>
      )}
    </section>
  )
}

type PriceProps = {
  readonly bench: BenchId
  readonly price: CountedPrice
  readonly currency: WhatToAsk['asking']['currency']
}

const Price = ({ bench, price, currency }: PriceProps) => {
  const { name, model, priceMinor, day, grade, from, say: said, completenessShare } = price
  const called = [name, model].filter((words) => words !== '').join(', ')
  return (
    <li>
      <p className="asking-price-line">
        <span>{called === '' ? (from === 'own' ? 'Your sale' : 'A price you saw') : called}</span>
        <span className="figure">{moneyText(priceMinor, price.currency)}</span>
      </p>
      <p className="quiet">
        {from === 'own' ? 'Your sale' : 'Seen'}, {dayText(day)}, grade {grade}
        {completenessShare < 1 ? `, ${percentText(completenessShare)} complete` : ''}
      </p>
      {said === null ? (
        <p className="quiet">Does not count: it is in other money.</p>
      ) : (
        <p className="quiet">
          Speaks for {levels[said.level]}; like this one it is {moneyText(said.likeMinor, currency)}; counts{' '}
          {percentText(said.weight)} of a sale today.
        </p>
      )}
      {said?.isOdd === true ? (
        <p className="asking-odd">
          Odd: far from the rest, so it counts {percentText(said.believedShare)} of what it would.
        </p>
      ) : null}
      {from === 'entered' ? <Strike bench={bench} id={price.id.replace(/^price:/, '')} called={called} /> : null}
    </li>
  )
}

const Strike = ({ bench, id, called }: { readonly bench: BenchId; readonly id: string; readonly called: string }) => {
  const client = useQueryClient()
  const [problems, setProblems] = useState<readonly Problem[]>([])
  const strike = async (): Promise<void> => {
    const refusal = await strikePrice(bench, id).then(
      (answer) => (answer.kind === 'ok' ? [] : answer.problems),
      (fault: unknown) => (fault instanceof Refusal ? fault.problems : []),
    )
    setProblems(refusal)
    if (refusal.length > 0) return
    say('Struck out.')
    await client.invalidateQueries({ queryKey: pricesKey(bench) })
  }
  return (
    <>
      <Button
        className="plain"
        aria-label={`Strike out: ${called === '' ? 'a price you saw' : called}`}
        onPress={() => void strike()}
      >
        Strike out
      </Button>
      <Problems problems={problems} />
    </>
  )
}
