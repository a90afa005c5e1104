import { mkdtemp, rm, writeFile } from 'node:fs/promises'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { serialize } from 'node:v8'
import type { Blueprint } from '../../../src/blueprint/schema.ts'
import { main } from '../../../src/cli/main.ts'
import { machineView } from '../../../src/machine/index.ts'
import type { Job } from '../../../src/machine/job.ts'
import type { MachineView } from '../../../src/machine/view.ts'

/** What one command did. */
type Ran = { readonly code: number; readonly out: string; readonly err: string }

/** The command line over a data folder of its own. */
export type CommandLine = {
  readonly folder: string
  readonly run: (...args: readonly string[]) => Promise<Ran>
  /** Runs with `--json`; throws when what came out is not JSON or anything went to standard error. */
  readonly json: (...args: readonly string[]) => Promise<{ readonly code: number; readonly value: unknown }>
  /** Writes a file beside the data: an object as JSON, a text as it is. Gives its path. */
  readonly file: (name: string, content: unknown) => Promise<string>
  readonly remove: () => Promise<void>
}

/** So many views are kept. */
const mostViews = 50
const views = new WeakMap<Blueprint, Map<string, MachineView>>()

/** The same job has the same view, and command after command asks for it: worked out once. */
const viewOf = (job: Job): MachineView => {
  const { blueprint, ...rest } = job
  const known = views.get(blueprint) ?? new Map<string, MachineView>()
  views.set(blueprint, known)
  const key = serialize(rest).toString('latin1')
  const view = known.get(key) ?? machineView(job)
  known.delete(key)
  known.set(key, view)
  for (const oldest of known.keys()) if (known.size > mostViews) known.delete(oldest)
  return view
}

export const makeCommandLine = async (): Promise<CommandLine> => {
  const folder = await mkdtemp(join(tmpdir(), 'thrum-cli-'))
  const run = async (...args: readonly string[]): Promise<Ran> => {
    const out: string[] = []
    const err: string[] = []
    const output = { out: (text: string) => void out.push(text), err: (text: string) => void err.push(text) }
    const code = await main(args, output, { THRUM_DATA: join(folder, 'data') }, undefined, viewOf)
    return { code, out: out.join('\n'), err: err.join('\n') }
  }
  return {
    folder,
    run,
    json: async (...args) => {
      const { code, out, err } = await run(...args, '--json')
      if (err !== '') throw new Error(`standard error: ${err}`)
      return { code, value: JSON.parse(out) as unknown }
    },
    file: async (name, content) => {
      const path = join(folder, name)
      await writeFile(path, typeof content === 'string' ? content : JSON.stringify(content))
      return path
    },
    remove: () => rm(folder, { recursive: true }),
  }
}
