import { useQuery } from '@tanstack/react-query'
import { moneyText, type Currency } from '../../base/money.ts'
import type { ExitId } from '../../machine/view.ts'
import { engine } from '../engine-client.ts'
import type { Outcome } from '../engine-protocol.ts'
import { Fold } from '../parts/fold.tsx'
import { dayText, exitNames, minutesText } from '../words.ts'
import { CameBack } from './came-back.tsx'
import { useSheet } from './sheet.ts'

/** How it ended; on a virtual machine also what had been hidden. */
export const LeftCard = () => {
  const { state } = useSheet().document
  if (state.left === null) return null
  const { exit, receivedMinor, profitMinor, safety, at } = state.left
  return (
    <section className="left-card" aria-label="How it ended">
      <h2 className="stamp">{exitNames[exit].past}</h2>
      <p>
        {dayText(at)}. Received {moneyText(receivedMinor, state.currency)}, profit{' '}
        {moneyText(profitMinor, state.currency)} in {minutesText(state.minutes)}.
      </p>
      {safety === '' ? null : <p>Safety: {safety}</p>}
      {state.practiceSeed === null && (exit === 'sell-working' || exit === 'sell-for-spares') ? <CameBack /> : null}
      {state.practiceSeed === null ? null : <Hidden seed={state.practiceSeed} exit={exit} />}
    </section>
  )
}

const Hidden = ({ seed, exit }: { readonly seed: number; readonly exit: ExitId }) => {
  const { document, blueprint } = useSheet()
  const { state, notes } = document
  const { data, error } = useQuery({
    queryKey: ['reveal', state.id, state.version],
    queryFn: async ({ signal }) =>
      (await engine().ask({ kind: 'reveal', job: { state, notes, blueprint }, seed, exit }, signal)).reveal,
    staleTime: Infinity,
    retry: false,
  })
  if (error !== null) return <p role="alert">What was hidden could not be shown: {error.message}</p>
  if (data === undefined) return <p className="quiet">Uncovering what was hidden …</p>
  return (
    <div className="reveal" role="group" aria-label="What was hidden">
      <h3>What was hidden</h3>
      <p className="reveal-name">{data.name}</p>
      <table>
        <thead>
          <tr>
            <td />
            <th scope="col">minutes</th>
            <th scope="col">money</th>
          </tr>
        </thead>
        <tbody>
          <Way name="you" outcome={data.yours} currency={state.currency} />
          <Way name="the plan alone" outcome={data.plans} currency={state.currency} />
        </tbody>
      </table>
      <Fold title="Move by move">
        <div className="two-ways">
          <Moves name="You" outcome={data.yours} />
          <Moves name="The plan alone" outcome={data.plans} />
        </div>
      </Fold>
      <p className="quiet">Seed {seed}: the same seed hides the same fault again.</p>
    </div>
  )
}

type WayProps = { readonly name: string; readonly outcome: Outcome }

const Way = ({ name, outcome, currency }: WayProps & { readonly currency: Currency }) => (
  <tr>
    <th scope="row">{name}</th>
    <td className="figure">{minutesText(outcome.minutes)}</td>
    <td className="figure">{moneyText(outcome.moneyMinor, currency)}</td>
  </tr>
)

const Moves = ({ name, outcome }: WayProps) => (
  <div>
    <h4>{name}</h4>
    <ol>
      {outcome.moves.map((move, at) => (
        <li key={`${at} ${move}`}>{move}</li>
      ))}
      <li>{exitNames[outcome.exit].future}</li>
    </ol>
  </div>
)
