import { useQuery } from '@tanstack/react-query'
import { useState } from 'react'
import type { BenchId } from '../../bench/contract.ts'
import type { Held } from '../../bench/shelf/at-hand.ts'
import { engine } from '../engine-client.ts'
import { Fold } from '../parts/fold.tsx'
import { Loading } from '../parts/loading.tsx'
import { Select } from '../parts/select.tsx'
import { useBlueprint, useMachine, useMachines, useRegion } from '../queries.ts'
import { Link } from '../router.tsx'
import { useMachineView } from '../use-machine-view.ts'
import { useOpenParts } from '../use-shelf.ts'
import { percentText } from '../words.ts'

/** A machine in hand, and what on the shelf would fit what it likely needs. */
export const WhatFits = ({ bench }: { readonly bench: BenchId }) => {
  const { data } = useMachines(bench)
  const [chosen, setChosen] = useState('')
  const inHand = (data?.pages.flatMap((page) => page.machines) ?? []).filter(
    ({ left, practiceSeed }) => left === null && practiceSeed === null,
  )
  return (
    <>
      <Select label="Machine in hand" value={chosen} onChange={setChosen}>
        <option value="">Choose a machine</option>
        {inHand.map(({ id, name }) => (
          <option key={id} value={id}>
            {name}
          </option>
        ))}
      </Select>
      {chosen === '' ? null : <FitsMachine key={chosen} bench={bench} machine={chosen} />}
    </>
  )
}

/** The likeliest parts first; a part that is hardly ever faulty comes last all the same. */
const FitsMachine = ({ bench, machine }: { readonly bench: BenchId; readonly machine: string }) => {
  const { data: document, error } = useMachine(bench, machine)
  const { data: blueprint } = useBlueprint(document?.state.blueprint ?? '')
  const { view } = useMachineView(bench, document, blueprint)
  const parts = useOpenParts(bench)
  const region = useRegion()
  const { data } = useQuery({
    queryKey: ['held', machine, document?.state.version, parts, region],
    queryFn: async ({ signal }) => {
      if (document === undefined || blueprint === undefined || region === undefined)
        throw new Error('A machine is needed')
      const { state, notes } = document
      const job = { state, notes, blueprint, shelf: parts }
      const asked = blueprint.parts.map(({ id }) => id)
      return (await engine().ask({ kind: 'held', job, region, parts: asked }, signal)).held
    },
    enabled: document !== undefined && blueprint !== undefined && region !== undefined && parts !== undefined,
    staleTime: Infinity,
  })
  if (data === undefined) return <Loading what="what fits" error={error} />
  const chance = (part: string): number => view?.parts[part] ?? 0
  const rows = data.toSorted((a, b) => chance(b.part) - chance(a.part))
  if (rows.length === 0) return <p>Nothing on the shelf is of the kind of its parts.</p>
  return (
    <ul className="ledger" aria-label="What fits">
      {rows.map(({ part, name, held }) => (
        <li key={part}>
          <strong>{name}</strong>
          <span className="quiet">
            {view === null ? 'Working out what it needs …' : `needed with ${percentText(chance(part))}`}
          </span>
          {held.map((one) => (
            <HeldRow key={one.id} bench={bench} held={one} />
          ))}
        </li>
      ))}
    </ul>
  )
}

const fitWords = { fits: 'Fits', 'may-fit': 'May fit', 'does-not-fit': 'Does not fit' } as const

const HeldRow = ({ bench, held: { id, name, place, fit } }: { readonly bench: BenchId; readonly held: Held }) => {
  const said = [...fit.reasons, ...fit.unknown.map((one) => `To find out: ${one}`), ...fit.care]
  return (
    <div>
      <p className="held">
        {fitWords[fit.kind]}:{' '}
        <Link to={{ kind: 'part', bench, id }} className="on-its-own">
          {name}
        </Link>
        {place === '' ? null : `, ${place}`}
      </p>
      {said.length === 0 ? null : (
        <Fold title={`${name}: ${fit.kind === 'does-not-fit' ? 'why not' : 'what to look at'}`}>
          <ul className="plain-list">
            {said.map((one) => (
              <li key={one}>{one}</li>
            ))}
          </ul>
        </Fold>
      )}
    </div>
  )
}
