import { problem, type Problem } from '../base/problem.ts'
import { plateProblems, profileNamed, profilesOf } from '../engines/limits/index.ts'
import { recallCheckId } from '../facts/recall-check.ts'
import { regionNames } from '../facts/regions.ts'
import type { Finding } from '../machine/proof/finding.ts'
import type { Job } from '../machine/job.ts'
import { runningBarred } from '../machine/running.ts'
import { coverName } from './cover-rules.ts'
import type { NoteContent } from './note.ts'
import { listText } from './words.ts'

type RulesContent = Extract<NoteContent, { kind: 'rules' }>

/** What is wrong with the rules chosen for a machine: of another region, or for another mains. */
export const rulesProblems = ({ rules: { region, profile } }: RulesContent, { plate }: Job): readonly Problem[] => {
  const known = profilesOf(region)
  const isOfRegion = profileNamed(profile)?.regions.includes(region) ?? false
  const wrong = problem(
    'rules-of-elsewhere',
    'rules.profile',
    `“${profile}” is not of ${regionNames[region]}`,
    `Use one of ${known.map(({ id }) => id).join(', ')}`,
  )
  const given = { ...plate, currentA: null, class: plate.protectionClass, massKg: plate.massKg ?? null }
  return [...(isOfRegion ? [] : [wrong]), ...plateProblems(given, region, 'rules.region')]
}

/** What is wrong with a finding as it is entered: no rules yet, a cover off, a machine that must not be switched on. */
export const findingProblems = (finding: Finding, job: Job): readonly Problem[] => {
  // The plate is looked up with the covers off as well as on.
  const isLookUp = finding.kind === 'look' && finding.step === recallCheckId
  const off = isLookUp ? [] : job.off.map((id) => coverName(job.blueprint, id))
  return [
    ...(job.rules === undefined || job.rules === null ? [noRules] : []),
    ...(off.length === 0 ? [] : [coversOff(off)]),
    ...(finding.kind === 'reading' && finding.value === null && finding.shown !== 'above' ? [noValue] : []),
    ...earthOfClassII(finding, job),
    ...notByEye(finding),
    ...liveProblems(finding, job),
  ]
}

const noRules = problem(
  'no-rules',
  'finding',
  'It is not said yet by which rules this machine is proved',
  'Choose region and edition first',
)

const coversOff = (off: readonly string[]): Problem =>
  problem(
    'covers-off',
    'finding',
    `The checks after repair are made on the closed machine, and the ${listText(off)} ${off.length === 1 ? 'is' : 'are'} off`,
    'Close all covers first: opening one afterwards makes the proof void',
  )

const noValue = problem(
  'no-value',
  'finding.value',
  'No figure is given',
  'Write what the instrument showed, or “above” where it was beyond its range',
)

const earthOfClassII = (finding: Finding, { plate }: Job): readonly Problem[] =>
  finding.kind === 'reading' && finding.quantity === 'earth-continuity' && plate.protectionClass === 'II'
    ? [
        problem(
          'no-earth',
          'finding.quantity',
          'A machine of class II has no protective conductor to measure',
          'Leave this check out; if the plate says class I after all, correct the plate',
        ),
      ]
    : []

/** Looking proves no resistance and no current. */
const notByEye = (finding: Finding): readonly Problem[] =>
  finding.kind === 'look' && ['earth-continuity', 'insulation', 'leakage'].includes(finding.step) && finding.good
    ? [
        problem(
          'not-by-eye',
          'finding.step',
          'This check is proved by a reading, not by looking',
          'Enter what an instrument showed, or leave it open',
        ),
      ]
    : []

/** Leakage is read while the machine is on: only after the dead checks. */
const liveProblems = (finding: Finding, job: Job): readonly Problem[] => {
  const isLive =
    finding.kind === 'look'
      ? finding.step === 'run'
      : ['touch-current', 'protective-conductor-current'].includes(finding.quantity)
  const barred = isLive ? runningBarred(job) : []
  if (barred.length === 0) return []
  const what = `This is done while the machine is switched on, and it must not be yet: ${barred.join('; ')}`
  return [problem('running-barred', 'finding', what, 'With the plug out, make the checks named first')]
}
