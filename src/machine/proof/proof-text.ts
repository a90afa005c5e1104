import { inSentence } from '../../base/in-sentence.ts'
import { regionNames } from '../../facts/regions.ts'
import { recallCheckId, recallCheckTitle } from '../../facts/recall-check.ts'
import { safetySteps } from '../../facts/safety-steps.ts'
import { amountText, profileNamed, quantityNames, sizeNamed, sizeText, unitOf } from '../../engines/limits/index.ts'
import type { Finding, ProvedLead, Rules } from './finding.ts'

/** What an instrument showed: `0.28 mA`, `more than 200 MΩ`, `beyond its range`. */
export const shownText = ({ quantity, shown, value }: Finding & { kind: 'reading' }): string => {
  if (value === null) return 'beyond its range'
  const amount = amountText(value, unitOf(quantity))
  switch (shown) {
    case 'figure':
      return amount
    case 'above':
      return `more than ${amount}`
    case 'below':
      return `less than ${amount}`
  }
}

/** A finding as it reads in the log. */
export const findingText = (finding: Finding): string => {
  if (finding.kind === 'look') {
    if (finding.step === recallCheckId) return recallFindingText(finding)
    const title = safetySteps.find(({ id }) => id === finding.step)?.title ?? finding.step
    const words = finding.text === '' ? '' : `, ${finding.text}`
    return `${inSentence(title)}: ${finding.good ? 'good' : 'not good'}${words}`
  }
  const { quantity, part, instrument, testVoltageV } = finding
  const at = testVoltageV === null ? '' : ` at ${testVoltageV} V`
  return `${quantityNames[quantity]} of ${part}: ${shownText(finding)}${at}, ${instrument.name}`
}

/** A look-up in the recall list as it reads in the log. */
const recallFindingText = ({ good, text }: Finding & { kind: 'look' }): string =>
  `${inSentence(recallCheckTitle)}: ${good ? 'in no list' : 'in a recall list'}${text === '' ? '' : `, ${text}`}`

export const leadText = ({ size, lengthM }: ProvedLead): string => {
  const known = sizeNamed(size)
  return `${lengthM} m of ${known === undefined ? size : sizeText(known)}`
}

/** By which rules, as it reads in the log. */
export const rulesText = ({ region, profile }: Rules, lead: ProvedLead | undefined): string => {
  const found = profileNamed(profile)
  const named = found === undefined ? profile : `${found.name}, ${found.edition}`
  return `Proved by the rules of ${regionNames[region]}: ${named}${lead === undefined ? '' : `; lead of ${leadText(lead)}`}`
}
