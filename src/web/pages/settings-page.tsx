import { useQueryClient } from '@tanstack/react-query'
import { useState, type FormEvent } from 'react'
import { Button } from 'react-aria-components/Button'
import { currencies, moneyFromText, type Currency } from '../../base/money.ts'
import { problem, type Problem } from '../../base/problem.ts'
import type { SettingsChange } from '../../bench/settings-change.ts'
import type { Settings } from '../../bench/settings.ts'
import { attitudeIds, attitudes, type Attitude } from '../../facts/attitudes.ts'
import { regionNames, regions, type Region } from '../../facts/regions.ts'
import { costNames } from '../../facts/trade-costs.ts'
import { changeSettings } from '../api.ts'
import { Field } from '../parts/field.tsx'
import { say } from '../parts/live.tsx'
import { Loading } from '../parts/loading.tsx'
import { OneOf } from '../parts/one-of.tsx'
import { Problems } from '../parts/problems.tsx'
import { Select } from '../parts/select.tsx'
import { problemsAt, problemsElsewhere } from '../problems-at.ts'
import { settingsKey, useSettings } from '../queries.ts'
import { PageTitle } from '../router.tsx'
import { CostFields, costsChange, textsOf, type CostTexts } from '../settings/cost-fields.tsx'
import { useWho } from '../sign-in/use-who.ts'
import { WhoSettings } from '../sign-in/who-settings.tsx'
import { capital } from '../words.ts'

/** What holds for the whole bench: the worth of an hour, the currency, how risk is weighed, what things cost. */
export const SettingsPage = () => {
  const { data, error } = useSettings()
  const who = useWho()
  return (
    <div className="sheet">
      <PageTitle windowTitle="Settings">Settings</PageTitle>
      {who?.role === 'bench' ? null : data === undefined ? (
        <Loading what="the settings" error={error} />
      ) : (
        <SettingsForm settings={data} />
      )}
      {who?.role === 'bench' ? <p>Only a keeper of the books changes what holds for the whole bench.</p> : null}
      {who === undefined ? null : <WhoSettings who={who} />}
    </div>
  )
}

const originalChoices = [
  { id: 'no', name: 'Not kept' },
  { id: 'yes', name: 'Kept too' },
] as const

const SettingsForm = ({ settings }: { readonly settings: Settings }) => {
  const [hour, setHour] = useState((settings.hourMinor / 100).toFixed(2))
  const [currency, setCurrency] = useState<Currency>(settings.currency)
  const [attitude, setAttitude] = useState<Attitude>(settings.attitude)
  const [region, setRegion] = useState<Region>(settings.region)
  const [checkedBy, setCheckedBy] = useState(settings.checkedBy)
  const [originals, setOriginals] = useState<'no' | 'yes'>(settings.keepOriginals ? 'yes' : 'no')
  const [costs, setCosts] = useState<CostTexts>(() => textsOf(settings.costs))
  const { problems, busy, isKept, keep } = useKeeping()
  const submit = (event: FormEvent): void => {
    event.preventDefault()
    const keepOriginals = originals === 'yes'
    void keep(settings, { hour, costs }, { currency, attitude, region, checkedBy: checkedBy.trim(), keepOriginals })
  }
  return (
    <form onSubmit={submit} aria-label="Settings" noValidate>
      <h2 className="settings-head">Your time</h2>
      <div className="field-row">
        <Field
          label="Your hour is worth"
          value={hour}
          onChange={setHour}
          unit={currency}
          inputMode="decimal"
          problems={problemsAt(problems, 'hourMinor')}
        />
        <Select label="Money" value={currency} onChange={(chosen) => setCurrency(chosen as Currency)}>
          {currencies.map((one) => (
            <option key={one}>{one}</option>
          ))}
        </Select>
      </div>
      <p className="hint">
        Every minute the plan spends is paid for at this. A machine takes both over when it comes in; for one that is on
        the bench, the hour is changed on its own page under “What it is worth”.
      </p>
      <h2 className="settings-head">Risk</h2>
      <OneOf
        label="What the plan goes for"
        options={attitudeIds.map((id) => ({ id, name: attitudes[id].name }))}
        chosen={attitude}
        onChange={setAttitude}
        className="attitude"
      />
      <p className="hint" aria-live="polite">
        {attitudes[attitude].means} It holds for every machine at once.
      </p>
      <h2 className="settings-head">Safety</h2>
      <Select label="Region" value={region} onChange={(chosen) => setRegion(chosen as Region)}>
        {regions.map((one) => (
          <option key={one} value={one}>
            {capital(regionNames[one])}
          </option>
        ))}
      </Select>
      <p className="hint">
        Machines are proved safe by its rules, until something else is said for one on its page “Is it safe to sell?”.
      </p>
      <Field
        label="Your name, for safety records"
        value={checkedBy}
        onChange={setCheckedBy}
        hint="Stands on a record as the one who made the checks."
        problems={problemsAt(problems, 'checkedBy')}
      />
      <h2 className="settings-head">Photographs</h2>
      <OneOf
        label="Files as they come from the camera"
        options={originalChoices}
        chosen={originals}
        onChange={setOriginals}
      />
      <p className="hint">
        What the pages show is made smaller and holds neither place nor device. A file kept as it was sent holds both,
        and takes several times the room; it never stands in a sale sheet or a story.
      </p>
      <CostFields region={region} currency={currency} texts={costs} problems={problems} onChange={setCosts} />
      <Problems problems={problemsElsewhere(problems, ['hourMinor', 'checkedBy', ...costPlaces])} />
      <Button type="submit" className="key enter" isDisabled={busy}>
        Keep these
      </Button>
      {isKept ? <p className="settings-kept">Kept.</p> : null}
    </form>
  )
}

const useKeeping = () => {
  const client = useQueryClient()
  const [problems, setProblems] = useState<readonly Problem[]>([])
  const [busy, setBusy] = useState(false)
  const [isKept, setKept] = useState(false)
  const keep = async (
    before: Settings,
    typed: { readonly hour: string; readonly costs: CostTexts },
    { currency, attitude, region, checkedBy, keepOriginals }: Omit<Settings, 'hourMinor' | 'costs'>,
  ): Promise<void> => {
    const hourMinor = moneyFromText(typed.hour)
    const { costs, problems: wrong } = costsChange(before.costs, typed.costs)
    setKept(false)
    if (hourMinor === null) return setProblems([notMoney(typed.hour), ...wrong])
    if (wrong.length > 0) return setProblems(wrong)
    const change: SettingsChange = {
      ...(hourMinor === before.hourMinor ? {} : { hourMinor }),
      ...(currency === before.currency ? {} : { currency }),
      ...(attitude === before.attitude ? {} : { attitude }),
      ...(region === before.region ? {} : { region }),
      ...(checkedBy === before.checkedBy ? {} : { checkedBy }),
      ...(keepOriginals === before.keepOriginals ? {} : { keepOriginals }),
      ...(Object.keys(costs).length === 0 ? {} : { costs }),
    }
    const isSame = Object.keys(change).length === 0
    setBusy(true)
    const answer = isSame ? null : await changeSettings(change)
    setBusy(false)
    if (answer?.kind === 'refused') return setProblems(answer.problems)
    setProblems([])
    if (answer !== null) client.setQueryData(settingsKey, answer.value)
    setKept(true)
    say('Settings kept.')
  }
  return { problems, busy, isKept, keep }
}

const costPlaces = costNames.map((name) => `costs.${name}`)

const notMoney = (text: string): Problem =>
  problem('not-money', 'hourMinor', `“${text}” is not an amount of money`, 'Write it like 9.50')
