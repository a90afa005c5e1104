import { lazy, Suspense, type ReactNode } from 'react'
import { Button } from 'react-aria-components/Button'
import { moneyText } from '../../base/money.ts'
import type { CheckMove, CoverStep, ExitMove, MoveView, RepairMove } from '../../machine/view.ts'
import { Fold } from '../parts/fold.tsx'
import { exitNames, lossText, minutesText, percentText } from '../words.ts'
import type { ShownMove } from './choice.ts'
import { ExitEntry } from './exit-entry.tsx'
import { GradeEntry } from './grade-entry.tsx'
import { MeterEntry } from './meter-entry.tsx'
import { RepairEntry } from './repair-entry.tsx'
import { useSheet } from './sheet.ts'
import { Sum } from './sum.tsx'
import { WattsEntry } from './watts-entry.tsx'

type MoveCardProps = {
  readonly shown: ShownMove
  readonly isBest: boolean
  /** Something is being entered: the card must stay until it is done. */
  readonly onHold: () => void
  readonly onBack: () => void
}

/** The one move, large: what to do, where the probes go, what it will read, what it is worth, and the place to enter it. */
export const MoveCard = ({ shown, isBest, onHold, onBack }: MoveCardProps) => {
  const { stale } = useSheet()
  const { move } = shown
  return (
    <section
      className={isBest ? 'move best' : 'move'}
      aria-label={isBest ? 'Next move' : 'Chosen move'}
      aria-busy={stale}
    >
      <header className="move-head">
        <p className="move-stamp">{stale ? 'Working it out …' : isBest ? 'Next move' : 'Your choice'}</p>
        <h2>{nameOf(move)}</h2>
        <MoveFigures shown={shown} />
      </header>
      {isBest ? null : <NotTheBest shown={shown} onBack={onBack} />}
      {move.why === '' ? null : <p className="move-why">{move.why}</p>}
      {move.how === '' ? null : <p>{move.how}</p>}
      <Warnings move={move} />
      <SetUp move={move} />
      {move.kind === 'check' ? <Check move={move} /> : null}
      {move.kind === 'repair' ? <Shelf move={move} /> : null}
      {move.kind === 'repair' ? <Odds move={move} figured={shown.figured} /> : null}
      {/* Presses do not bubble, so clicks are caught on their way down; typing is not, as its field would be drawn again too soon. */}
      <div onInput={onHold} onClickCapture={onHold}>
        <Entry move={move} onDone={onBack} />
      </div>
    </section>
  )
}

const nameOf = (move: MoveView): string =>
  move.kind === 'exit' && move.name === '' ? exitNames[move.exit].future : move.name

const MoveFigures = ({ shown: { move, figured } }: { readonly shown: ShownMove }) => {
  const { document } = useSheet()
  const money = (minor: number): string => moneyText(minor, document.state.currency)
  return (
    <p className="move-figures">
      <span>
        <strong className="figure">
          {minutesText(move.kind === 'exit' ? move.minutes + (move.workMin ?? 0) : move.minutes)}
        </strong>
        {move.kind === 'exit' && move.workMin !== null ? ' of work follow' : null}
      </span>
      {move.costMinor > 0 ? (
        <span>
          costs <strong className="figure">{money(move.costMinor)}</strong>
        </span>
      ) : null}
      {figured && move.kind === 'check' ? (
        <span>
          knowing is worth <strong className="figure">{money(move.informationMinor)}</strong>
        </span>
      ) : null}
      {figured && move.kind === 'exit' ? (
        <span>
          expected <strong className="figure">{money(move.expectedMinor)}</strong>
        </span>
      ) : null}
    </p>
  )
}

const NotTheBest = ({ shown, onBack }: { readonly shown: ShownMove; readonly onBack: () => void }) => {
  const { document, view } = useSheet()
  const { lessMinor, lossProbability } = shown.move
  const size = moneyText(Math.abs(lessMinor), document.state.currency)
  const against =
    Math.round(lessMinor) < 0
      ? `Choosing this brings ${size} more on average than the next move`
      : `Choosing this costs ${size} against the next move`
  return (
    <div className="move-instead">
      <p>
        {shown.figured
          ? `${against}${lossProbability === null ? '' : `; it ${lossText(lossProbability)}`}.`
          : 'The plan does not offer this now, so there is no figure for it. It can still be entered.'}
      </p>
      {shown.figured && shown.move.lessSum !== null && Math.round(lessMinor) !== 0 ? (
        <Fold title="Why that much?">
          <Sum sum={shown.move.lessSum} currency={document.state.currency} />
        </Fold>
      ) : null}
      {view === null ? null : (
        <Button className="plain" onPress={onBack}>
          Back to the best move
        </Button>
      )}
    </div>
  )
}

const Warnings = ({ move }: { readonly move: MoveView }) => {
  const { view } = useSheet()
  const runsIt = move.kind === 'check' && (move.checkKind === 'run' || move.checkKind === 'air')
  const first = runsIt ? (view?.beforeRunning ?? []) : []
  return (
    <>
      {move.caution === null ? null : <p className="caution">{move.caution}</p>}
      {first.length === 0 ? null : (
        <p className="caution">Do not run it before these have passed: {first.join(', ')}.</p>
      )}
      {move.kind === 'repair' && move.forbidden !== null ? (
        <p className="caution">Never do this instead. {move.forbidden}</p>
      ) : null}
    </>
  )
}

/** The part of the shelf that the plan reckons with; what it would bring if it were sold is what using it costs. */
const Shelf = ({ move: { shelf } }: { readonly move: RepairMove }) => {
  const { document } = useSheet()
  if (shelf === null) return null
  const money = (minor: number): string => moneyText(minor, document.state.currency)
  return (
    <p>
      From the shelf: <strong>{shelf.name}</strong>
      {shelf.place === '' ? null : `, ${shelf.place}`}, stands at {money(shelf.costMinor)}, would fetch{' '}
      {money(shelf.fetchesMinor)}
      {shelf.fit.kind === 'fits' ? null : `. May fit; first find out: ${shelf.fit.unknown.join('; ')}`}.
    </p>
  )
}

const SetUp = ({ move }: { readonly move: MoveView }) => {
  const runsIt = move.kind === 'check' && (move.checkKind === 'run' || move.checkKind === 'air')
  const plugFirst = move.kind !== 'exit' && !runsIt
  const steps = move.kind === 'check' ? move.setUp : []
  const plug =
    plugFirst && !steps.some((step) => /plug out/i.test(step))
      ? ['Plug out']
      : steps.filter((step) => /plug out/i.test(step))
  const rest = steps.filter((step) => !/plug out/i.test(step))
  if (plug.length + rest.length + move.open.length + move.close.length === 0) return null
  return (
    <ol className="set-up" aria-label="Set up">
      {plug.map((step) => (
        <li key={step} className="plug-out">
          {step}
        </li>
      ))}
      {move.close.map((step) => (
        <Step key={`on ${step.id}`} step={step} verb="Put back" />
      ))}
      {move.open.map((step) => (
        <Step key={`off ${step.id}`} step={step} verb="Take off" />
      ))}
      {rest.map((step) => (
        <li key={step}>{step}</li>
      ))}
    </ol>
  )
}

const Step = ({ step, verb }: { readonly step: CoverStep; readonly verb: string }) => (
  <li>
    {verb}: {step.name}
    <span className="quiet">
      {[minutesText(step.minutes), step.fixings, verb === 'Take off' ? step.hint : null]
        .filter((part) => part !== null && part !== '')
        .join(', ')}
    </span>
  </li>
)

const Check = ({ move }: { readonly move: CheckMove }) => (
  <>
    {move.probes === null ? null : (
      <ul className="probes" aria-label="Probes">
        <li>
          <Probe colour="red" /> <span className="quiet">red on</span> <strong>{move.probes.red.name}</strong>
        </li>
        <li>
          <Probe colour="black" /> <span className="quiet">black on</span> <strong>{move.probes.black.name}</strong>
        </li>
      </ul>
    )}
    {move.expected.length === 0 ? null : (
      <dl className="expected" aria-label="What it would show">
        {move.expected.map((one) => (
          <div key={`${one.under} ${one.text}`}>
            <dt>{one.suspect === null ? 'if good' : `if ${one.under}`}</dt>
            <dd className="figure">{one.text}</dd>
          </div>
        ))}
      </dl>
    )}
    {move.remarks.map((remark) => (
      <p key={remark} className="remark">
        {remark}
      </p>
    ))}
  </>
)

const Probe = ({ colour }: { readonly colour: 'red' | 'black' }) => (
  <span className={`probe ${colour}`} aria-hidden="true" />
)

const Odds = ({ move, figured }: { readonly move: RepairMove; readonly figured: boolean }) => {
  const { blueprint } = useSheet()
  const names = move.removes.map((id) => blueprint.faults.find((fault) => fault.id === id)?.name ?? id)
  return (
    <dl className="expected odds" aria-label="What it mends">
      <Line name="mends">
        <ul>
          {names.map((name) => (
            <li key={name}>{name}</li>
          ))}
        </ul>
      </Line>
      {figured ? <Line name="needed now">{percentText(move.needed)}</Line> : null}
      <Line name="works when done">{percentText(move.success)}</Line>
    </dl>
  )
}

const Line = ({ name, children }: { readonly name: string; readonly children: ReactNode }) => (
  <div>
    <dt>{name}</dt>
    <dd>{children}</dd>
  </div>
)

const Entry = ({ move, onDone }: { readonly move: MoveView; readonly onDone: () => void }) => {
  switch (move.kind) {
    case 'check':
      return <CheckEntry move={move} onDone={onDone} />
    case 'repair':
      return <RepairEntry move={move} onDone={onDone} />
    case 'exit':
      return <LeavingEntry move={move} onDone={onDone} />
  }
}

const StripEntry = lazy(async () => ({ default: (await import('./strip-entry.tsx')).StripEntry }))

/** What is broken for parts goes to the shelf; a whole lot of parts that is sold at once, and a virtual machine, just leave. */
const LeavingEntry = ({ move, onDone }: { readonly move: ExitMove; readonly onDone: () => void }) => {
  const { document } = useSheet()
  if (move.exit !== 'break-for-parts' || document.state.practiceSeed !== null)
    return <ExitEntry move={move} onDone={onDone} />
  return (
    <>
      <p className="hint">What to strip, what brings most for a minute first. What is ticked goes to the shelf.</p>
      <Suspense fallback={<p className="quiet">Fetching the list …</p>}>
        <StripEntry breaks onDone={onDone} />
      </Suspense>
      <Fold title="All its parts were sold in one lot">
        <ExitEntry move={move} onDone={onDone} />
      </Fold>
    </>
  )
}

const CheckEntry = ({ move, onDone }: { readonly move: CheckMove; readonly onDone: () => void }) => {
  const check = useSheet().blueprint.checks.find(({ id }) => id === move.id)
  if (move.checkKind === 'meter') return <MeterEntry move={move} onDone={onDone} />
  return check !== undefined && check.kind !== 'meter' && check.scale !== undefined ? (
    <WattsEntry move={move} check={check} onDone={onDone} />
  ) : (
    <GradeEntry move={move} onDone={onDone} />
  )
}
