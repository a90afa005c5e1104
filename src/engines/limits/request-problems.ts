import { problem, type Problem } from '../../base/problem.ts'
import { regionNames, type Region } from '../../facts/regions.ts'
import type { LimitQuantity, SafetyProfile } from '../../facts/safety-limits.ts'
import { safetyProfiles } from '../../facts/safety-profiles.ts'
import { quantityNames } from './amount-text.ts'
import { knownFuses } from './fuse-time.ts'
import { limitFor, profileNamed, profilesOf, waitsForLead, type Machine } from './profiles.ts'
import { plateProblems } from './rated-current.ts'
import type { LimitsRequest } from './request-schema.ts'
import { stepQuantities } from './steps.ts'
import type { Finding } from './verdict.ts'

type Task = LimitsRequest['do']
type About = Extract<Task, { kind: 'steps' | 'verdict' }>

/** Problems that only show once the parts of a request are seen together. */
export const requestProblems = (task: Task): readonly Problem[] => {
  switch (task.kind) {
    case 'profiles':
    case 'conductor':
    case 'cable':
    case 'capacitor':
      return []
    case 'steps':
      return aboutProblems(task)
    case 'verdict':
      return verdictProblems(task)
    case 'judge':
      return judgeProblems(task)
    case 'expected-earth':
      return withProfile(task.profile, () => [])
    case 'lead':
      return plateProblems(task.plate, task.region, 'do.plate')
    case 'seized':
      return [...plateProblems(task.plate, task.region, 'do.plate'), ...fuseProblems(task.fuseA, 'do.fuseA')]
    case 'fuse':
      return fuseProblems(task.ratingA, 'do.ratingA')
  }
}

const withProfile = (id: string, then: (profile: SafetyProfile) => readonly Problem[]): readonly Problem[] => {
  const profile = profileNamed(id)
  if (profile !== undefined) return then(profile)
  const mend = `Use one of ${safetyProfiles.map((one) => one.id).join(', ')}`
  return [problem('unknown-profile', 'do.profile', `There is no profile called “${id}”`, mend)]
}

const aboutProblems = (task: About): readonly Problem[] =>
  withProfile(task.profile, (profile) => [
    ...regionProblems(profile, task.region),
    ...leadProblems(profile, task.machine, task.lead !== null, 'do.lead'),
  ])

const regionProblems = (profile: SafetyProfile, region: Region): readonly Problem[] => {
  if (profilesOf(region).includes(profile)) return []
  const known = profilesOf(region).map(({ id }) => id)
  const what =
    profile.standing === 'reference'
      ? `${profile.name} is no set of checks after repair`
      : `${profile.name} is not for ${regionNames[region]}`
  return [problem('profile-of-another-region', 'do.profile', what, `Use one of ${known.join(', ')}`)]
}

const leadProblems = (
  profile: SafetyProfile,
  machine: Machine,
  hasLead: boolean,
  where: string,
): readonly Problem[] => {
  if (hasLead || !waitsForLead(profile, machine)) return []
  const what = 'The limit of the protective conductor goes by the lead, and the lead is not given'
  return [problem('lead-missing', where, what, 'Give the length of the lead and the size of its conductors')]
}

const judgeProblems = (task: Extract<Task, { kind: 'judge' }>): readonly Problem[] => {
  const { limit, quantity } = task
  if (limit.kind === 'given') return []
  return withProfile(limit.profile, (profile) => {
    const missing = limitProblems(profile, quantity, limit.machine, 'do.quantity')
    if (missing.length > 0 || quantity !== 'earth-continuity') return missing
    return leadProblems(profile, limit.machine, limit.lead !== null, 'do.limit.lead')
  })
}

const limitProblems = (
  profile: SafetyProfile,
  quantity: LimitQuantity,
  machine: Machine,
  where: string,
): readonly Problem[] => {
  if (limitFor(profile, quantity, machine, null) !== undefined) return []
  const what =
    quantity === 'earth-continuity' && machine.class === 'II'
      ? 'A class II machine has no protective conductor to test'
      : `${profile.name} has no limit on ${quantityNames[quantity]} for class ${machine.class}`
  const has = profile.limits.filter(({ classes }) => classes.includes(machine.class)).map((one) => one.quantity)
  return [problem('no-limit', where, what, `It has limits on ${[...new Set(has)].join(', ')}`)]
}

const verdictProblems = (task: Extract<Task, { kind: 'verdict' }>): readonly Problem[] =>
  withProfile(task.profile, (profile) => [
    ...aboutProblems(task),
    ...task.findings.flatMap((finding, i) => findingProblems(profile, finding, task.machine, `do.findings.${i}`)),
  ])

/** A measured check wants its reading. A class II earth reading is let be: the verdict says it is not applicable. */
const findingProblems = (
  profile: SafetyProfile,
  finding: Finding,
  machine: Machine,
  where: string,
): readonly Problem[] => {
  if (finding.kind === 'reading') {
    const isSetAside = finding.quantity === 'earth-continuity' && machine.class === 'II'
    return isSetAside ? [] : limitProblems(profile, finding.quantity, machine, `${where}.quantity`)
  }
  if (stepQuantities[finding.step].length === 0) return []
  const what = `“${finding.step}” is measured, not looked at`
  return [problem('reading-wanted', `${where}.step`, what, 'Give the reading and the instrument')]
}

const fuseProblems = (ratingA: number, where: string): readonly Problem[] =>
  knownFuses.includes(ratingA)
    ? []
    : [
        problem(
          'unknown-fuse',
          where,
          `No times are published for a ${ratingA} A fuse`,
          `Use ${knownFuses.join(' or ')} A`,
        ),
      ]
