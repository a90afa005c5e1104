import { useState, type FormEvent } from 'react'
import { Button } from 'react-aria-components/Button'
import { moneyText } from '../../base/money.ts'
import type { PartCondition } from '../../bench/shelf/part-note.ts'
import type { StripLine } from '../../machine/shelf/strip-list.ts'
import { Field } from '../parts/field.tsx'
import { Fold } from '../parts/fold.tsx'
import { say } from '../parts/live.tsx'
import { Problems } from '../parts/problems.tsx'
import { Select } from '../parts/select.tsx'
import { conditionOptions } from '../shelf/words.ts'
import { minutesText, percentText } from '../words.ts'
import { useSheet } from './sheet.ts'
import { useShares, useTakeOff } from './use-take-off.ts'
import '../style/shelf.css'

type Draft = { readonly condition: PartCondition; readonly place: string; readonly minutes: number }
type StripEntryProps = {
  /** The rest of the machine is gone with it: the parts take its whole cost. */
  readonly breaks: boolean
  readonly onDone: () => void
}

/** The parts of a machine in the order in which a minute brings most; those that are ticked go to the shelf. */
export const StripEntry = ({ breaks, onDone }: StripEntryProps) => {
  const { document, blueprint, view, stale } = useSheet()
  const { send, busy, problems } = useTakeOff()
  const lines = view?.strip.lines ?? []
  const [ticks, setTicks] = useState<Readonly<Record<string, boolean>>>({})
  const [drafts, setDrafts] = useState<Readonly<Record<string, Partial<Draft>>>>({})
  const priced = new Set(lines.map(({ part }) => part))
  const others = blueprint.parts.filter(({ id }) => !priced.has(id) && !document.state.missing.includes(id))
  const isTicked = (part: string): boolean =>
    ticks[part] ?? (breaks && (lines.find((line) => line.part === part)?.isWorthIt ?? false))
  const chosen = [...lines.map(({ part }) => part), ...others.map(({ id }) => id)].filter(isTicked)
  const breaking = breaks ? { breaks: {} } : {}
  const shares = useShares({ taken: chosen.map((part) => ({ part })), ...breaking })
  const shareOf = (part: string): number | undefined => shares?.[chosen.indexOf(part)]
  const submit = async (event: FormEvent): Promise<void> => {
    event.preventDefault()
    if (!(await send({ taken: chosen.map((part) => ({ part, ...drafts[part] })), ...breaking }))) return
    say(breaks ? 'Broken for parts; they are on the shelf.' : 'On the shelf.')
    onDone()
  }
  const row = (part: string, name: string, line?: StripLine) => (
    <StripRow
      key={part}
      name={name}
      line={line}
      isTicked={isTicked(part)}
      onTick={(on) => setTicks((before) => ({ ...before, [part]: on }))}
      draft={drafts[part] ?? {}}
      onDraft={(draft) => setDrafts((before) => ({ ...before, [part]: draft }))}
      shareMinor={shareOf(part)}
    />
  )
  return (
    <form
      className="entry"
      onSubmit={(event) => void submit(event)}
      aria-label={breaks ? 'Break it for parts' : 'Take parts off'}
    >
      {view === null ? <p className="quiet">Working out what each part is worth …</p> : null}
      <ul className="strip-list" aria-label="Parts, best first">
        {lines.map((line) => row(line.part, line.name, line))}
      </ul>
      {others.length === 0 ? null : (
        <Fold title="Parts that fetch nothing by the blueprint">
          <ul className="strip-list">{others.map(({ id, name }) => row(id, name))}</ul>
        </Fold>
      )}
      <Problems problems={problems} />
      <Button type="submit" className="key enter" isDisabled={busy || stale || chosen.length === 0}>
        {breaks ? `Break it: ${chosen.length} to the shelf` : `${chosen.length} to the shelf`}
      </Button>
    </form>
  )
}

type StripRowProps = {
  readonly name: string
  readonly line: StripLine | undefined
  readonly isTicked: boolean
  readonly onTick: (on: boolean) => void
  readonly draft: Partial<Draft>
  readonly onDraft: (draft: Partial<Draft>) => void
  readonly shareMinor: number | undefined
}

const StripRow = ({ name, line, isTicked, onTick, draft, onDraft, shareMinor }: StripRowProps) => {
  const { document } = useSheet()
  const money = (minor: number): string => moneyText(minor, document.state.currency)
  return (
    <li>
      <label className="shelf-choice">
        <input type="checkbox" checked={isTicked} onClick={() => onTick(!isTicked)} onChange={ignored} />
        <strong>{name}</strong>
      </label>
      {line === undefined ? null : (
        <span className="quiet">
          {money(line.priceMinor)}, sound {percentText(line.soundChance)}, sells {percentText(line.sellChance)};{' '}
          {minutesText(line.minutes)}; brings {money(line.netMinor)} with your time paid
        </span>
      )}
      {isTicked ? (
        <>
          <span className="quiet">{shareMinor === undefined ? '' : `takes ${money(shareMinor)} of the cost`}</span>
          <div className="field-row">
            <Select
              label={`Condition of ${name.toLowerCase()}`}
              value={draft.condition ?? 'untested'}
              onChange={(condition) => onDraft({ ...draft, condition: condition as PartCondition })}
            >
              {conditionOptions.map(({ id, name: called }) => (
                <option key={id} value={id}>
                  {called}
                </option>
              ))}
            </Select>
            <Field
              label={`Where ${name.toLowerCase()} lies`}
              value={draft.place ?? ''}
              onChange={(place) => onDraft({ ...draft, place })}
            />
          </div>
        </>
      ) : null}
    </li>
  )
}

/** The card draws itself anew on the way down of a click, so that the change never comes; the click does. */
const ignored = (): void => undefined
