import { useState } from 'react'
import { Button } from 'react-aria-components/Button'
import { moneyText, type Currency } from '../../base/money.ts'
import type { BenchId } from '../../bench/contract.ts'
import type { PartState } from '../../bench/shelf/part-state.ts'
import { partKinds, type PartKind } from '../../facts/part-kinds.ts'
import type { PartList } from '../api-shelf.ts'
import { Field } from '../parts/field.tsx'
import { Fold } from '../parts/fold.tsx'
import { Loading } from '../parts/loading.tsx'
import { Select } from '../parts/select.tsx'
import { Link, PageTitle } from '../router.tsx'
import { PutForm } from '../shelf/put-form.tsx'
import { WhatFits } from '../shelf/what-fits.tsx'
import { conditionText, specText } from '../shelf/words.ts'
import { useParts } from '../use-shelf.ts'
import '../style/shelf.css'

/** Parts in hand: what there is, what it stands at, and what it fits. */
export const ShelfPage = ({ bench }: { readonly bench: BenchId }) => {
  const [text, setText] = useState('')
  const [group, setGroup] = useState('')
  const [state, setState] = useState<'there' | 'gone'>('there')
  const { data, error, hasNextPage, fetchNextPage, isFetching } = useParts(bench, { state, text, group })
  const first = data?.pages[0]
  const parts = data?.pages.flatMap((page) => page.items)
  return (
    <div className="sheet">
      <PageTitle windowTitle={bench === 'demo' ? 'Demo shelf' : 'Shelf'}>
        {bench === 'demo' ? 'Demo shelf' : 'The shelf'}
      </PageTitle>
      {first === undefined ? <Loading what="the shelf" error={error} /> : <Totals groups={first.groups} />}
      <Fold title="Put a part on the shelf">
        <PutForm bench={bench} />
      </Fold>
      <Fold title="What fits?">
        <WhatFits bench={bench} />
      </Fold>
      <div className="field-row">
        <Field label="Find" value={text} onChange={setText} hint="words of its name" />
        <Select label="Kind" value={group} onChange={setGroup}>
          <option value="">All kinds</option>
          {(first?.groups ?? []).map(({ group: kind, currency }) => (
            <option key={`${kind} ${currency}`} value={kind}>
              {kindName(kind)}
            </option>
          ))}
        </Select>
        <Select label="Which" value={state} onChange={(value) => setState(value as 'there' | 'gone')}>
          <option value="there">There now</option>
          <option value="gone">Gone</option>
        </Select>
      </div>
      <p className="quiet" role="status">
        {first === undefined ? '' : `${first.total} ${first.total === 1 ? 'part' : 'parts'} found`}
      </p>
      <ul className="ledger" aria-label="Parts" aria-busy={isFetching}>
        {(parts ?? []).map((part) => (
          <PartRow key={part.id} bench={bench} part={part} />
        ))}
      </ul>
      {hasNextPage ? (
        <Button className="key" onPress={() => void fetchNextPage()}>
          Show more
        </Button>
      ) : null}
    </div>
  )
}

const kindName = (group: string): string => partKinds[group as PartKind].name

/** What lies there and stands in the books, in each currency, and by kind. */
const Totals = ({ groups }: Pick<PartList, 'groups'>) => {
  const currencies = [...new Set(groups.map(({ currency }) => currency))]
  if (groups.length === 0) return <p>The shelf is empty.</p>
  return (
    <>
      {currencies.map((currency) => {
        const own = groups.filter((one) => one.currency === currency)
        const [count, stockMinor] = [sum(own.map((one) => one.count)), sum(own.map((one) => one.stockMinor))]
        return (
          <div key={currency}>
            <p className="shelf-total">
              <strong className="figure">{count}</strong> {count === 1 ? 'part, stands' : 'parts, stand'} at{' '}
              <strong className="figure">{moneyText(stockMinor, currency)}</strong>
            </p>
            <Fold title="By kind">
              <KindTable groups={own} currency={currency} />
            </Fold>
          </div>
        )
      })}
    </>
  )
}

const sum = (numbers: readonly number[]): number => numbers.reduce((total, one) => total + one, 0)

const KindTable = ({ groups, currency }: Pick<PartList, 'groups'> & { readonly currency: Currency }) => (
  <table className="shelf-kinds">
    <thead>
      <tr>
        <th scope="col">Kind</th>
        <th scope="col">Parts</th>
        <th scope="col">Stand at</th>
      </tr>
    </thead>
    <tbody>
      {groups.map(({ group, count, stockMinor }) => (
        <tr key={group}>
          <th scope="row">{kindName(group)}</th>
          <td className="figure">{count}</td>
          <td className="figure">{moneyText(stockMinor, currency)}</td>
        </tr>
      ))}
    </tbody>
  </table>
)

const PartRow = ({ bench, part }: { readonly bench: BenchId; readonly part: PartState }) => {
  const spec = specText(part.partKind, part.spec)
  const money = (minor: number): string => moneyText(minor, part.currency)
  return (
    <li>
      <Link to={{ kind: 'part', bench, id: part.id }} className="ledger-line">
        <strong className="ledger-name">
          {part.count > 1 ? `${part.count} × ` : ''}
          {part.name}
        </strong>
      </Link>
      <span className="quiet">
        {[spec, conditionText(part.condition), part.place, part.reservedFor === null ? '' : 'kept for a machine']
          .filter((one) => one !== '')
          .join(' · ')}
      </span>
      <span className="worth-line">
        <span>
          stands at <span className="figure">{money(part.costMinor)}</span>
        </span>
        {part.fetchesMinor === null ? null : (
          <span>
            one would fetch <span className="figure">{money(part.fetchesMinor)}</span>
          </span>
        )}
      </span>
    </li>
  )
}
