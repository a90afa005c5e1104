import { readFileSync } from 'node:fs'
import { problem } from '../base/problem.ts'
import { refused, ok, type Result } from '../base/result.ts'
import { runAirflow } from '../engines/airflow/index.ts'
import { runBelief } from '../engines/belief/index.ts'
import { runLimits } from '../engines/limits/index.ts'
import { runMoney } from '../engines/money/index.ts'
import { runNetwork } from '../engines/network/index.ts'
import { certify, checkPlanProblem, plan } from '../engines/plan/index.ts'

/** Nodes that `thrum certify` opens at most: seconds for a problem of a few faults. */
const openings = 500

/** Engines that take JSON and give JSON, by name. */
export const engines: Readonly<Record<string, (input: unknown) => Result<unknown>>> = {
  network: (input) => runNetwork(input),
  belief: (input) => runBelief(input),
  airflow: (input) => runAirflow(input),
  limits: (input) => runLimits(input),
  money: (input) => runMoney(input),
  plan: (input) => {
    const checked = checkPlanProblem(input)
    return checked.kind === 'ok' ? ok(plan(checked.value)) : checked
  },
  certify: (input) => {
    const checked = checkPlanProblem(input)
    return checked.kind === 'ok' ? ok(certify(checked.value, { openings })) : checked
  },
}

/** Reads a JSON file, or standard input for `-`. */
export const readJson = (file: string): Result<unknown> => {
  const text = readText(file)
  if (text.kind === 'refused') return text
  try {
    return ok(JSON.parse(text.value) as unknown)
  } catch (error) {
    return refused(
      problem(
        'not-json',
        file,
        `This is not JSON (${(error as Error).message})`,
        'Give a JSON file, or - for standard input',
      ),
    )
  }
}

const readText = (file: string): Result<string> => {
  try {
    return ok(readFileSync(file === '-' ? 0 : file, 'utf8'))
  } catch (error) {
    return refused(
      problem(
        'cannot-read',
        file,
        `This file cannot be read (${(error as Error).message})`,
        'Give a file that exists, or - for standard input',
      ),
    )
  }
}
