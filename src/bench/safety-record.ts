import type { Region } from '../facts/regions.ts'
import type { Job } from '../machine/job.ts'
import { proofView } from '../machine/proof/make-proof-view.ts'
import type { ProofView } from '../machine/proof/proof-view.ts'
import type { MachineDocument } from './contract.ts'
import { inOrder, struckIds } from './fold.ts'
import { dayText } from './words.ts'

const localRules =
  'Local rules and a competent person decide. This record says what was checked, how, and what came of it; it is no approval by any body.'
const whatItProves =
  'It holds for the machine as it was when the last check was made. Opening it, repairing it or changing its lead makes it void.'

/** The safety record of a machine as its notes stand, all in words; the same notes give the same record. */
export const safetyRecordOf = (
  document: MachineDocument,
  job: Job,
  { region, checkedBy }: { readonly region: Region; readonly checkedBy: string },
) => {
  const view = proofView(job, region)
  const { state } = document
  const overruled = state.left?.exit === 'sell-working' && state.left.safety !== '' ? state.left.safety : null
  return {
    machine: {
      name: state.name,
      architecture: job.blueprint.name,
      plate: plateWords(state.plate),
      lead: view.lead === null ? 'not known' : view.lead.text,
    },
    work: workLines(document),
    rules: {
      region: view.rules.regionName,
      name: view.rules.name,
      edition: view.rules.edition,
      id: view.rules.profile,
    },
    steps: view.steps.map(recordStep),
    instruments: instrumentsIn(view),
    verdict: { kind: view.verdict.kind, title: view.verdict.title, sentence: view.verdict.sentence },
    recall: view.recall.sentence,
    overruled: view.verdict.kind === 'fit' ? null : overruled,
    voided: voidedText(view, document),
    decisionRule: `${view.decisionRule}: a reading counts as passed where it keeps from its limit by more than its expanded uncertainty (k = 2).`,
    madeBy: checkedBy,
    madeOn: lastCheckDay(document, view) ?? dayText(state.addedAt),
    remarks: [localRules, whatItProves, ...view.machine],
    selling: sellingLines(view),
    sources: sourcesOf(view),
    reference: `${state.id}, note ${state.version}`,
  }
}

const plateWords = ({
  voltageV,
  frequencyHz,
  powerW,
  protectionClass,
  massKg,
}: MachineDocument['state']['plate']): string =>
  [
    `${voltageV} V`,
    `${frequencyHz} Hz`,
    `${powerW} W`,
    `class ${protectionClass}`,
    ...(massKg === undefined ? [] : [`${massKg} kg`]),
  ].join(', ')

/** Repairs as they stand in the log, each with its day. */
const workLines = ({ notes, lines }: MachineDocument): readonly string[] => {
  const struck = struckIds(notes)
  return inOrder(notes)
    .filter(({ id, content }) => content.kind === 'repaired' && !struck.has(id))
    .map(({ id, at }) => `${dayText(at)}: ${lines.find((line) => line.id === id)?.text ?? id}`)
}

const recordStep = ({ title, stateText, why, findings }: ProofView['steps'][number]) => ({
  title,
  state: stateText,
  why: why ?? '',
  readings: findings.map(({ where, read, limit, uncertainty, instrument, sentence }) => ({
    where,
    read,
    limit,
    uncertainty,
    instrument,
    sentence,
  })),
})

const instrumentsIn = ({ steps }: ProofView) => {
  const used = steps.flatMap(({ findings }) => findings).filter(({ uncertainty }) => uncertainty !== '')
  const names = [...new Set(used.map(({ instrument }) => instrument))]
  return names.map((name) => {
    const days = used
      .filter(({ instrument, checkedOn }) => instrument === name && checkedOn !== '')
      .map((one) => one.checkedOn)
    const last = days.toSorted().at(-1)
    return { name, checkedOn: last === undefined ? 'not known' : dayText(last) }
  })
}

const voidedText = ({ voided, verdict }: ProofView, { lines }: MachineDocument): string | null => {
  if (voided === null || verdict.kind === 'fit') return null
  const by = lines.find(({ id }) => id === voided.note)?.text ?? 'later work'
  return `${voided.findings.length} earlier ${voided.findings.length === 1 ? 'finding is' : 'findings are'} void since: ${by}.`
}

const lastCheckDay = ({ notes }: MachineDocument, { steps }: ProofView): string | null => {
  const standing = new Set(steps.flatMap(({ findings }) => findings.map(({ note }) => note)))
  const last = inOrder(notes).findLast(({ id }) => standing.has(id))
  return last === undefined ? null : dayText(last.at)
}

/** The law of the region by name, what it asks, and that local rules decide. */
const sellingLines = ({ duties: { regionName, law, sentences } }: ProofView): readonly string[] => [
  `In ${regionName}: ${law}.`,
  ...sentences,
]

const sourcesOf = ({ steps, duties }: ProofView): readonly string[] => [
  ...new Set(steps.filter(({ state }) => state !== 'not-applicable').flatMap(({ sources }) => sources)),
  ...duties.sources,
]
