import { problem, type Problem } from '../../base/problem.ts'
import { ok, refused, type Result } from '../../base/result.ts'
import { chooseLead, plateProblems, type LeadChoice, type ListedCable } from '../../engines/limits/index.ts'
import { longestLead } from '../../facts/cords.ts'
import type { Region } from '../../facts/regions.ts'
import type { Plate } from '../plate.ts'

/**
 * A replacement lead for a machine by its plate: conductor, cord, plug, fuse, colours, terminals, and which of the cables would do.
 * Refused where the plate does not go with the region, or the length is none of a lead.
 */
export const leadChoice = (
  plate: Plate,
  region: Region,
  lengthM: number,
  cables: readonly ListedCable[] = [],
): Result<LeadChoice> => {
  const { voltageV, powerW, protectionClass, massKg } = plate
  const given = { voltageV, powerW, currentA: null, class: protectionClass, massKg: massKg ?? null }
  const problems = [...plateProblems(given, region, 'plate'), ...lengthProblems(lengthM)]
  if (problems.length > 0) return refused(...problems)
  const choice = chooseLead(given, region, lengthM, cables)
  return choice === undefined ? refused(noCord) : ok(choice)
}

const lengthProblems = (lengthM: number): readonly Problem[] =>
  lengthM > 0 && lengthM <= longestLead.lengthM
    ? []
    : [
        problem(
          'no-such-length',
          'lengthM',
          `No appliance has a lead of ${lengthM} m`,
          `Measure it from plug to machine: more than 0 and up to ${longestLead.lengthM} m`,
        ),
      ]

const noCord = problem(
  'no-cord',
  'plate',
  'No cord in the tables carries the current of this plate',
  'Check the watts on the plate; leave this one to a licensed person',
)
