import { sourceText } from '../base/source-text.ts'
import type { LeadView, ProofStepView, ProofView } from '../machine/proof/proof-view.ts'

/** What is proved of a machine as lines of text. */
export const proofLines = (name: string, view: ProofView): readonly string[] => [
  `${name}: ${view.verdict.title}`,
  `  ${view.verdict.sentence}`,
  ...view.verdict.toProve.flatMap(({ sentence, instruments }) => [
    `  open: ${sentence}`,
    ...(instruments.length === 0 ? [] : [`        could prove it: ${instruments.join('; ')}`]),
  ]),
  view.recall.sentence,
  ...(view.recall.state === 'not-done' ? [`  ${view.recall.list}`, ...view.recall.how.map((one) => `  - ${one}`)] : []),
  `Rules: ${view.rules.regionName}, ${view.rules.name}, ${view.rules.edition} (${view.rules.profile})${view.rules.isNoted ? '' : ', not noted yet: thrum rules'}`,
  `Lead: ${view.lead === null ? 'not known' : `${view.lead.text}${view.lead.isNoted ? '' : ', as the blueprint has it'}`}`,
  ...view.machine,
  ...(view.voided === null
    ? []
    : [
        `Void since it was opened or repaired: ${view.voided.findings.map(({ where, read }) => `${where}: ${read}`).join('; ')}`,
      ]),
  ...view.steps.flatMap(stepLines),
  ...(view.seized === null ? [] : [view.seized]),
  ...dutiesLines(view.duties),
  `Instruments: ${view.instruments.map(({ id }) => id).join(', ')}`,
]

/** What the law of the region asks of who sells a used machine. */
const dutiesLines = ({ regionName, law, sentences }: ProofView['duties']): readonly string[] => [
  `Selling it second-hand in ${regionName}: ${law}.`,
  ...sentences.map((one) => `  ${one}`),
]

const stepLines = (step: ProofStepView): readonly string[] => [
  `${step.title} (${step.id}): ${step.stateText}${step.asked === 'optional' ? ', not required' : ''}`,
  ...(step.why === null ? [] : [`  ${step.why}`]),
  ...(step.state === 'not-done' || step.state === 'not-proven' ? step.how.map((one) => `  - ${one}`) : []),
  ...(step.state === 'not-done' || step.state === 'not-proven' ? step.cautions.map((one) => `  ! ${one}`) : []),
  ...step.limits.map(
    ({ name, text, because }) =>
      `  ${name}: ${text ?? 'the lead has to be known first'}${because === null ? '' : `, ${because}`}`,
  ),
  ...step.findings.map(
    ({ where, read, uncertainty, instrument, sentence }) =>
      `  found, ${where}: ${read}${uncertainty === '' ? '' : ` ± ${uncertainty}`}, ${instrument}. ${sentence}`,
  ),
]

/** A replacement lead as lines of text. */
export const leadLines = (lead: LeadView): readonly string[] => [
  `Conductor: ${lead.conductor.size}, ${lead.cores} cores, for ${lead.rated.currentA.toFixed(1)} A`,
  ...lead.conductor.sources.map((one) => `  ${sourceText(one)}`),
  `Cords: ${lead.cords.types.map(({ id, sheath }) => `${id} (${sheath})`).join(', ')}`,
  `  ${sourceText(lead.cords.source)}`,
  `Plug: ${lead.plug.name}`,
  `Fuse: ${lead.fuse === null ? 'none in the plug' : `${lead.fuse.ratingA} A, ${lead.fuse.colour}`}`,
  `  ${sourceText(lead.fuseSource)}`,
  ...lead.conductors.map(({ is, colour, terminal }) => `${is}: ${colour}, to ${terminal}`),
  ...lead.remarks,
]
