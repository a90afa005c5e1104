import { useRef } from 'react'
import { Button } from 'react-aria-components/Button'
import type { Currency } from '../../base/money.ts'
import { problem, type Problem } from '../../base/problem.ts'
import { sourceText } from '../../base/source-text.ts'
import type { SettingsChange } from '../../bench/settings-change.ts'
import type { Settings } from '../../bench/settings.ts'
import { costFieldText, costFromText, costMend, costText, costWords, type CostUnit } from '../../facts/cost-words.ts'
import type { Region } from '../../facts/regions.ts'
import { costFactIn, costNames, type CostName } from '../../facts/trade-costs.ts'
import { Field } from '../parts/field.tsx'
import { Fold } from '../parts/fold.tsx'
import { problemsAt } from '../problems-at.ts'

/** What stands in the fields: a text where one was set or typed, nothing where the usual holds. */
export type CostTexts = Readonly<Partial<Record<CostName, string>>>

/** The texts of what is set. */
export const textsOf = (costs: Settings['costs']): CostTexts =>
  Object.fromEntries(
    costNames.flatMap((name) => {
      const value = costs[name]
      return value === undefined ? [] : [[name, costFieldText(name, value)]]
    }),
  )

/** What of the costs is to be changed, and what is wrong with what was typed. A field left as it was changes nothing. */
export const costsChange = (
  before: Settings['costs'],
  texts: CostTexts,
): { readonly costs: NonNullable<SettingsChange['costs']>; readonly problems: readonly Problem[] } => {
  const kept = textsOf(before)
  const changed = costNames.filter((name) => texts[name] !== kept[name])
  const values = changed.map((name) => ({ name, text: texts[name], value: valueOf(name, texts[name]) }))
  return {
    costs: Object.fromEntries(values.map(({ name, value }) => [name, value ?? null])),
    problems: values.flatMap(({ name, text, value }) =>
      text !== undefined && value === null
        ? [problem('not-a-cost', `costs.${name}`, `“${text}” cannot be read`, costMend[costWords[name].unit])]
        : [],
    ),
  }
}

const valueOf = (name: CostName, text: string | undefined): number | null =>
  text === undefined ? null : costFromText(name, text)

type CostFieldsProps = {
  readonly region: Region
  readonly currency: Currency
  readonly texts: CostTexts
  readonly problems: readonly Problem[]
  readonly onChange: (texts: CostTexts) => void
}

/** All costs with where each comes from; each can be changed and put back. */
export const CostFields = ({ region, currency, texts, problems, onChange }: CostFieldsProps) => (
  <Fold title="What things cost" className="cost-fields">
    <p className="hint">
      What you leave as it is follows the region and the money above. It holds for every machine at once; an amount that
      you set holds for machines in {currency}.
    </p>
    {costNames.map((name) => (
      <CostField
        key={name}
        name={name}
        region={region}
        currency={currency}
        text={texts[name]}
        problems={problemsAt(problems, `costs.${name}`)}
        onChange={(text) => onChange({ ...texts, [name]: text })}
      />
    ))}
  </Fold>
)

type CostFieldProps = {
  readonly name: CostName
  readonly region: Region
  readonly currency: Currency
  readonly text: string | undefined
  readonly problems: readonly Problem[]
  readonly onChange: (text: string | undefined) => void
}

const CostField = ({ name, region, currency, text, problems, onChange }: CostFieldProps) => {
  const { value, source } = costFactIn(region, currency, name)
  const { name: words, unit } = costWords[name]
  const usual = costText(name, value, currency)
  const box = useRef<HTMLDivElement>(null)
  // The button goes away with what it puts back; who pressed it stays at the field.
  const putBack = (): void => {
    onChange(undefined)
    box.current?.querySelector('input')?.focus()
  }
  return (
    <div className="cost-field" ref={box}>
      <Field
        label={words}
        value={text ?? costFieldText(name, value)}
        onChange={onChange}
        unit={unitText(unit, currency)}
        inputMode="decimal"
        hint={text === undefined ? sourceText(source) : `Set by you. Usual: ${usual}, ${sourceText(source)}`}
        problems={problems}
      />
      {text === undefined ? null : (
        <Button className="key" onPress={putBack} aria-label={`Put back to ${usual}: ${words}`}>
          Put back to {usual}
        </Button>
      )}
    </div>
  )
}

const unitText = (unit: CostUnit, currency: Currency): string => {
  switch (unit) {
    case 'money':
      return currency
    case 'minutes':
      return 'min'
    case 'percent':
      return '%'
  }
}
