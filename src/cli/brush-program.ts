import type { Command } from 'commander'
import { airQuantityFromText } from '../base/air-units.ts'
import { problem, type Problem } from '../base/problem.ts'
import { ok, refused, type Result } from '../base/result.ts'
import { quantityFromText } from '../base/units.ts'
import { brushCheck, type BrushReading } from '../machine/index.ts'
import { show, showProblems, type Shell } from './output.ts'

type Options = Readonly<Record<string, string | undefined>> & { readonly json: boolean }

/** `thrum brush`: speed, belt slip and drag of a brush roll from what was measured. */
export const addBrushCommand = (program: Command, shell: Shell): void => {
  program
    .command('brush')
    .description('speed, belt slip and drag of a brush roll, by strobe or tone, calliper and power meter')
    .requiredOption('--roll <rpm>', 'speed of the roll')
    .option('--motor <rpm>', 'speed of the motor, with both diameters')
    .option('--roll-diameter <length>', 'diameter of the roll where the belt lies')
    .option('--motor-diameter <length>', 'diameter of the spindle where the belt lies')
    .option('--on <power>', 'input power with the roll driven, off the floor')
    .option('--off <power>', 'input power with the roll not driven')
    .action((_given: unknown, command: Command) => {
      const options = command.optsWithGlobals<Options>()
      const reading = readingOf(options)
      const answer = reading.kind === 'ok' ? brushCheck(reading.value) : reading
      shell.finish(
        answer.kind === 'refused'
          ? showProblems(shell.output, options.json, answer.problems)
          : show(shell.output, options.json, answer.value, () => answer.value.text),
      )
    })
}

const readingOf = ({ roll, motor, rollDiameter, motorDiameter, on, off }: Options): Result<BrushReading> => {
  const halves = [...halfGiven(ofDrive, [motor, rollDiameter, motorDiameter]), ...halfGiven(ofDrag, [on, off])]
  if (halves.length > 0) return refused(...halves)
  const rollRpm = rpm(roll, '--roll')
  const drive = [motor, rollDiameter, motorDiameter].every((one) => one === undefined)
    ? null
    : {
        motorRpm: rpm(motor, '--motor'),
        rollDiameterM: airQuantityFromText(rollDiameter ?? '', 'lengthM', '--roll-diameter'),
        motorDiameterM: airQuantityFromText(motorDiameter ?? '', 'lengthM', '--motor-diameter'),
      }
  const drag =
    on === undefined && off === undefined
      ? null
      : { onW: quantityFromText(on ?? '', 'powerW', '--on'), offW: quantityFromText(off ?? '', 'powerW', '--off') }
  const all = [rollRpm, ...Object.values(drive ?? {}), ...Object.values(drag ?? {})]
  const problems = all.flatMap((one) => (one.kind === 'refused' ? one.problems : []))
  if (problems.length > 0) return refused(...problems)
  return ok({
    rollRpm: valueIn(rollRpm),
    ...(drive === null
      ? {}
      : {
          drive: {
            motorRpm: valueIn(drive.motorRpm),
            rollDiameterM: valueIn(drive.rollDiameterM),
            motorDiameterM: valueIn(drive.motorDiameterM),
          },
        }),
    ...(drag === null ? {} : { drag: { onW: valueIn(drag.onW), offW: valueIn(drag.offW) } }),
  })
}

const ofDrive = problem(
  'half-a-drive',
  '--motor',
  'The slip of a belt needs the speed of the motor and both diameters',
  'Give --motor, --roll-diameter and --motor-diameter, or none of them',
)
const ofDrag = problem(
  'half-a-drag',
  '--on',
  'The drag of a roll needs the watts with it driven and without',
  'Give --on and --off, or neither',
)

/** The problem where only some of what belongs together is given. */
const halfGiven = (wrong: Problem, given: readonly (string | undefined)[]): readonly Problem[] => {
  const count = given.filter((one) => one !== undefined).length
  return count === 0 || count === given.length ? [] : [wrong]
}

const valueIn = (read: Result<number>): number => (read.kind === 'ok' ? read.value : NaN)

const rpm = (written: string | undefined, where: string): Result<number> => {
  const digits = /^\s*(\d+(?:\.\d+)?)\s*(?:rpm)?\s*$/i.exec(written ?? '')?.[1]
  if (digits !== undefined) return ok(Number(digits))
  const what = written === undefined ? 'No speed is given' : `“${written}” is not a speed`
  return refused(problem('not-a-speed', where, what, 'Write turns per minute, such as 3200'))
}
