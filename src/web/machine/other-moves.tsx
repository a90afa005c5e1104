import { useId, useState } from 'react'
import { Button } from 'react-aria-components/Button'
import { moneyText, type Currency } from '../../base/money.ts'
import type { MoveView } from '../../machine/view.ts'
import { Fold } from '../parts/fold.tsx'
import { Select } from '../parts/select.tsx'
import { exitNames, lossText, minutesText } from '../words.ts'
import { choiceOf, runs, type Choice } from './choice.ts'
import { useSheet } from './sheet.ts'
import { Sum } from './sum.tsx'

type OtherMovesProps = { readonly chosen: Choice | null; readonly onChoose: (choice: Choice) => void }

/** Everything else that can be done, best first, with what choosing it costs; and any check the blueprint knows. */
export const OtherMoves = ({ chosen, onChoose }: OtherMovesProps) => {
  const { view } = useSheet()
  const others = (view?.others ?? []).toSorted((a, b) => a.lessMinor - b.lessMinor)
  const [first, more] = [others.slice(0, firstShown), others.slice(firstShown)]
  return (
    <Fold title="Other moves">
      {others.length === 0 ? null : <p className="hint">What each costs if it is done before the best move.</p>}
      <MoveList moves={first} chosen={chosen} onChoose={onChoose} />
      <AnyMove onChoose={onChoose} />
      {more.length === 0 ? null : (
        <Fold title={`The other ${more.length}, best first`}>
          <MoveList moves={more} chosen={chosen} onChoose={onChoose} />
        </Fold>
      )}
    </Fold>
  )
}

/** As many as a phone shows at once. */
const firstShown = 8

const MoveList = ({ moves, chosen, onChoose }: OtherMovesProps & { readonly moves: readonly MoveView[] }) => (
  <ul className="moves">
    {moves.map((move) => (
      <li key={choiceOf(move)}>
        <OtherMove move={move} pressed={choiceOf(move) === chosen} onChoose={onChoose} />
      </li>
    ))}
  </ul>
)

type OtherMoveProps = {
  readonly move: MoveView
  readonly pressed: boolean
  readonly onChoose: (choice: Choice) => void
}

const OtherMove = ({ move, pressed, onChoose }: OtherMoveProps) => {
  const { document } = useSheet()
  const choose = (): void => onChoose(choiceOf(move))
  return (
    <div className="other-move">
      <Button className="move-line" aria-pressed={pressed} onPress={choose}>
        <span className="move-line-name">
          {move.kind === 'repair' ? `${move.name}: ${move.optionName}` : move.name}
        </span>{' '}
        <span className="move-line-cost">
          {minutesText(move.minutes)} · <LessText minor={move.lessMinor} currency={document.state.currency} />
          {move.lossProbability === null ? null : `, ${lossText(move.lossProbability)}`}
        </span>
      </Button>
      <WhyLess move={move} />
    </div>
  )
}

/** Why a move is worth less than the best one: its grounds, one tap away. */
const WhyLess = ({ move }: { readonly move: MoveView }) => {
  const { document } = useSheet()
  const [open, setOpen] = useState(false)
  const id = useId()
  if (move.lessSum === null || Math.round(move.lessMinor) === 0) return null
  return (
    <>
      <button
        type="button"
        className="plain why-less"
        aria-expanded={open}
        aria-controls={id}
        aria-label={`Why does it cost that: ${move.name}`}
        onClick={() => setOpen(!open)}
      >
        why?
      </button>
      <div id={id} className="less-sum" hidden={!open}>
        {open ? <Sum sum={move.lessSum} currency={document.state.currency} /> : null}
      </div>
    </>
  )
}

/** What choosing a move costs against the best one. */
const LessText = ({ minor, currency }: { readonly minor: number; readonly currency: Currency }) =>
  Math.round(minor) === 0 ? (
    <>as good</>
  ) : minor < 0 ? (
    <>
      brings <span className="figure">{moneyText(-minor, currency)}</span> more on average
    </>
  ) : (
    <>
      costs <span className="figure">{moneyText(minor, currency)}</span>
    </>
  )

const AnyMove = ({ onChoose }: Pick<OtherMovesProps, 'onChoose'>) => {
  const { blueprint, view } = useSheet()
  // Nothing is run before the dead checks have passed; the rule of the bench refuses it anyway.
  const barred = view === null || view.redFlags.length > 0 || view.beforeRunning.length > 0
  const [picked, setPicked] = useState<Choice>('')
  return (
    <div className="any-move">
      <Select label="Anything in this blueprint" value={picked} onChange={setPicked}>
        <option value="">Choose a check, repair or exit</option>
        <optgroup label="Checks">
          {blueprint.checks.map((check) => (
            <option key={check.id} value={`check ${check.id}`} disabled={barred && runs(check)}>
              {check.name}
            </option>
          ))}
        </optgroup>
        <optgroup label="Repairs">
          {blueprint.repairs.map((repair) => (
            <option key={repair.id} value={`repair ${repair.id} ${repair.options[0]?.id ?? ''}`}>
              {repair.name}
            </option>
          ))}
        </optgroup>
        <optgroup label="Exits">
          {Object.entries(exitNames).map(([id, name]) => (
            <option key={id} value={`exit ${id}`}>
              {name.future}
            </option>
          ))}
        </optgroup>
      </Select>
      <Button className="key" isDisabled={picked === ''} onPress={() => onChoose(picked)}>
        Put it on the card
      </Button>
    </div>
  )
}
