import type { Blueprint } from '../blueprint/schema.ts'
import { meterSpec } from '../facts/meters.ts'
import { faultShows, machineModel, type FaultShows } from '../machine/index.ts'
import { show, type Shell } from './output.ts'

/** `thrum blueprint shows ID`: which checks show each fault, the surest first. */
export const showShows = (shell: Shell, blueprint: Blueprint, json: boolean): number => {
  const shows = faultShows(machineModel(blueprint, blueprint.plate), meterSpec('budget-multimeter'))
  return show(shell.output, json, shows, () => shows.flatMap((one) => showsLines(blueprint, one)))
}

const showsLines = (blueprint: Blueprint, { fault, checks }: FaultShows): readonly string[] => [
  `${fault}: ${blueprint.faults.find(({ id }) => id === fault)?.name ?? fault}`,
  ...checks.map(
    ({ check, text, soundText, sure }) =>
      `  ${check}: ${text}, sound: ${soundText}; then it is this fault ${(sure * 100).toFixed(0)} %`,
  ),
]
