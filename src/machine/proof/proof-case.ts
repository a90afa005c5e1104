import {
  profileNamed,
  safetyVerdict,
  sizeNamed,
  usualProfile,
  type Finding as JudgedFinding,
  type Lead,
  type SafetyCase,
  type SafetyVerdict,
} from '../../engines/limits/index.ts'
import { recallCheckId } from '../../facts/recall-check.ts'
import type { Region } from '../../facts/regions.ts'
import type { Blueprint } from '../../blueprint/schema.ts'
import type { Job, JobEvent } from '../job.ts'
import type { Finding, ProvedLead, Rules } from './finding.ts'
import { lastRecallCheck, withRecall } from './recall.ts'

/** A finding that stands, with the note it is in; `note` is null for a run that the bench's own checks show. */
export type Standing = { readonly note: string | null; readonly finding: Finding }

/** The findings since the machine was last opened or repaired, and what made those before them void. */
export type Findings = {
  readonly standing: readonly Standing[]
  readonly voided: readonly Standing[]
  /** The note that made them void. */
  readonly voidedBy: string | null
}

/** Opening a cover or a repair makes void what was found before: nobody knows what was moved. */
export const findingsOf = (job: Pick<Job, 'blueprint' | 'events'>): Findings => {
  let standing: Standing[] = []
  const voided: Standing[] = []
  let voidedBy: string | null = null
  for (const event of job.events) {
    if (event.kind === 'opened' || event.kind === 'repaired') {
      if (standing.some(({ note }) => note !== null)) {
        voided.push(...standing)
        voidedBy = event.note
      }
      standing = []
    }
    if (event.kind === 'proof' && !isRecallCheck(event.finding))
      standing.push({ note: event.note, finding: event.finding })
    standing.push(...ranWell(job.blueprint, event))
  }
  return { standing, voided, voidedBy }
}

/** A look-up in the recall list is of the model: no cover and no repair of this machine makes it void. */
const isRecallCheck = (finding: Finding): boolean => finding.kind === 'look' && finding.step === recallCheckId

/** A run that shows the machine working is the last of the checks after repair. */
const ranWell = (blueprint: Blueprint, event: JobEvent): readonly Standing[] => {
  if (event.kind !== 'reading' || event.result.kind !== 'grade') return []
  const { outcome } = event.result
  const check = blueprint.checks.find(({ id }) => id === event.check)
  if (check === undefined || check.kind === 'meter' || !check.provesWorking) return []
  const good = outcome === check.outcomes[0]?.id
  return [{ note: null, finding: { kind: 'look', step: 'run', good, text: check.name } }]
}

/** The region whose rules are taken until something else is said. */
export const usualRules = (region: Region): Rules => ({ region, profile: usualProfile(region).id })

/** The lead of a machine: as noted, else as its blueprint has it. */
export const leadOf = ({ blueprint, lead }: Pick<Job, 'blueprint' | 'lead'>): ProvedLead | null => {
  if (lead !== undefined && lead !== null) return lead
  const flex = blueprint.circuit.find((element) => element.kind === 'wire' && element.part === 'flex')
  return flex?.kind === 'wire' ? { size: `${flex.areaMm2} mm2`, lengthM: flex.lengthM } : null
}

/** The case that the limits engine judges. Throws for rules that are not known: the door has refused them. */
export const proofCase = (job: Job, rules: Rules): SafetyCase => {
  const profile = profileNamed(rules.profile)
  if (profile === undefined) throw new RangeError(`no rules ${rules.profile}`)
  const { blueprint, plate } = job
  return {
    profile,
    region: rules.region,
    machine: {
      class: plate.protectionClass,
      isPortable: true,
      hasElectronicSwitch: blueprint.circuit.some(({ kind }) => kind === 'triac'),
      hasSurgeSuppressor: false,
      massKg: plate.massKg ?? blueprint.plate.massKg ?? null,
    },
    lead: engineLead(leadOf(job)),
    acceptance: 'guarded',
    findings: findingsOf(job).standing.flatMap(({ finding }) => judged(finding)),
  }
}

const engineLead = (lead: ProvedLead | null): Lead | null => {
  const size = lead === null ? undefined : sizeNamed(lead.size)
  return lead === null || size === undefined ? null : { lengthM: lead.lengthM, size }
}

const judged = (finding: Finding): readonly JudgedFinding[] => {
  if (finding.kind === 'reading')
    return [{ kind: 'reading', quantity: finding.quantity, part: finding.part, ...readingOf(finding) }]
  const { step, good } = finding
  return step === recallCheckId ? [] : [{ kind: 'look', step, good }]
}

/** A reading as the limits engine takes it. */
export const readingOf = ({ shown, value, testVoltageV, instrument }: Finding & { kind: 'reading' }) => ({
  reading: { shown, value: value ?? Infinity, rangeMaximum: null, testVoltageV },
  instrument,
})

/** What the checks prove by these rules; a machine found in a recall list is not fit, whatever they prove. */
export const verdictBy = (job: Job, rules: Rules): SafetyVerdict =>
  withRecall(safetyVerdict(proofCase(job, rules)), lastRecallCheck(job))

/** Whether the machine is proved fit to sell by the rules noted for it; not proven where no rules were noted. */
export const proofVerdict = (job: Job): SafetyVerdict | null =>
  job.rules === undefined || job.rules === null ? null : verdictBy(job, job.rules)
