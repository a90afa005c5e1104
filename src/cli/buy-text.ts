import { moneyText } from '../base/money.ts'
import type { Blueprint } from '../blueprint/schema.ts'
import type { BuyingView, QuestionView, SpotCheckView, ToldView } from '../machine/buying/index.ts'

type Money = (minor: number) => string

/** A buying view as text: the answer first, then what it rests on, then what to ask and to look at. */
export const buyLines = (view: BuyingView, blueprint: Blueprint): readonly string[] => {
  const money: Money = (minor) => moneyText(minor, view.currency)
  return [
    ceilingLine(view, money),
    ...cautionLines(view, money),
    ...askingLines(view, money),
    '',
    `Understood: ${understoodText(view)}`,
    ...(view.understood.remark === null ? [] : [view.understood.remark]),
    `Sells mended for about ${money(view.price.medianMinor)}, nine in ten ${money(view.price.ninety[0])} to ${money(view.price.ninety[1])} (${view.price.from === 'market' ? 'market' : 'blueprint'}). Fetching: ${travelText(view, money)}.`,
    '',
    'Likeliest faults',
    ...view.faults.map((fault) => faultLine(fault, money)),
    `  ${percent(view.nothingWrong)}  Nothing wrong`,
    `Once bought, first: ${firstText(view, blueprint)}`,
    '',
    'Ask before going (what the answer is worth)',
    ...view.questions.flatMap((question) => questionLines(question, money)),
    `  Always: ${view.alwaysAsk.join('. ')}.`,
    '',
    'On the spot, plug out of the socket, before paying',
    ...view.spotChecks.flatMap((check) => checkLines(check, money)),
    '',
    view.quick.text,
  ]
}

const percent = (share: number): string =>
  `${Math.round(100 * share)
    .toString()
    .padStart(3)} %`

const wantedText = ({ wanted }: BuyingView, money: Money): string =>
  wanted.kind === 'profit'
    ? wanted.minor === 0
      ? 'to lose nothing, own time paid'
      : `for ${money(wanted.minor)} above own time`
    : `for ${money(wanted.minor)} an hour`

const ceilingLine = (view: BuyingView, money: Money): string => {
  const { minor, exactMinor, notEvenForNothing } = view.ceiling
  return notEvenForNothing
    ? `Not even for nothing: ${wantedText(view, money)} it falls ${money(-exactMinor)} short.`
    : `Pay ${money(minor)} at most, ${wantedText(view, money)}.`
}

const cautionLines = ({ ceiling, attitude }: BuyingView, money: Money): readonly string[] =>
  attitude === 'cautious' && ceiling.loweredByCaution
    ? [`On average alone it would be ${money(ceiling.onAverageMinor)}; caution lowers it.`]
    : []

const askingLines = (view: BuyingView, money: Money): readonly string[] => {
  const { askingMinor, lossChance, profitMinor, spreadMinor, ninety, minutes, anHourMinor } = view.atAsking
  const anHour = anHourMinor === null ? '' : `, ${money(anHourMinor)} an hour`
  return [
    `At ${money(askingMinor)}: ${money(profitMinor)} above own time on average, give or take ${money(spreadMinor)}; nine in ten ${money(ninety[0])} to ${money(ninety[1])}.`,
    `It loses money, own time at ${money(view.hourMinor)} an hour counted, in ${percent(lossChance).trim()} of cases. About ${hours(minutes)} in all${anHour}.`,
  ]
}

const hours = (minutes: number): string => `${(minutes / 60).toFixed(1)} h`

const understoodText = ({ understood: { phrases, complaints, claims } }: BuyingView): string => {
  const read = phrases.map(({ text, name }) => `“${text}”: ${name}`)
  const reckoned = [...complaints, ...claims].join(', ')
  return [...read, `reckoned with ${reckoned === '' ? 'no complaint' : reckoned}`].join('; ')
}

const travelText = ({ travel }: BuyingView, money: Money): string =>
  `${travel.km.toFixed(0)} km and ${Math.round(travel.minutes)} min, ${money(travel.minor)}`

const faultLine = ({ name, probability, mend, profitMinor }: BuyingView['faults'][number], money: Money): string => {
  const how =
    mend === null ? 'no repair' : `${mend.optionName}, ${money(mend.costMinor)} and ${Math.round(mend.minutes)} min`
  return `  ${percent(probability)}  ${name}: ${how}; then ${money(profitMinor)} at the asking price`
}

const firstText = ({ first }: BuyingView, { checks, repairs }: Blueprint): string => {
  const repair = first.id.split(':')[0]
  const named = [...checks, ...repairs].find(({ id }) => id === (first.kind === 'repair' ? repair : first.id))
  return named?.name ?? first.id.replaceAll('-', ' ')
}

const questionLines = ({ id, text, valueMinor, results }: QuestionView, money: Money): readonly string[] => [
  `  ${money(valueMinor).padStart(6)}  ${text}  [${id}]`,
  `          ${resultsText(results, money)}`,
]

const checkLines = ({ id, name, minutes, valueMinor, results }: SpotCheckView, money: Money): readonly string[] => [
  `  ${money(valueMinor).padStart(6)}  ${name}, ${minutes} min  [${id}]`,
  `          ${resultsText(results, money)}`,
]

/** Results with the most to pay after each, likeliest first. */
const resultsText = (results: readonly ToldView[], money: Money): string =>
  results
    .toSorted((a, b) => b.probability - a.probability)
    .map(({ text, ceilingMinor }) => `${text} → ${ceilingMinor < 0 ? 'leave it' : money(ceilingMinor)}`)
    .join('; ')
