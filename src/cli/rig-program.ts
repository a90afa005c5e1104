import type { Command } from 'commander'
import { writeFile } from 'node:fs/promises'
import { problem } from '../base/problem.ts'
import { ok, refused, type Result } from '../base/result.ts'
import { unknownId } from '../bench/unknown.ts'
import { blueprintById, blueprints } from '../blueprint/library.ts'
import {
  airRigOf,
  airRigOfClass,
  drillingSheetOf,
  suctionClassById,
  suctionClassIds,
  type AirRig,
} from '../machine/index.ts'
import { drillingTemplateSvg } from '../report/drilling-template.ts'
import { exitCodes, show, showProblems, type Shell } from './output.ts'
import type { StorePlace } from '../store/open-bench-store.ts'
import { ownBlueprintsIn } from './own-blueprints.ts'
import { placeOf, type PlaceOptions } from './store-place.ts'
import { rigLines } from './rig-text.ts'

type Options = { readonly json: boolean; readonly template?: string } & PlaceOptions

/** `thrum rig BLUEPRINT`: a homemade suction rig for a kind of machine, and a page to drill its plates by. */
export const addRigCommand = (program: Command, shell: Shell): void => {
  program
    .command('rig <blueprint>')
    .description(`how to make a rig to read suction: a blueprint, or a kind (${suctionClassIds.join(', ')})`)
    .option('--template <file>', 'write a drilling template to print on A4 (SVG)')
    .action(async (name: string, _options: unknown, command: Command) => {
      shell.finish(await rigCommand(shell, name, command.optsWithGlobals<Options>()))
    })
}

const rigCommand = async (shell: Shell, name: string, { json, template, ...place }: Options): Promise<number> => {
  const rig = await rigNamed(name, placeOf(place))
  if (rig.kind === 'refused') return showProblems(shell.output, json, rig.problems)
  const written = template === undefined ? ok(null) : await writeTemplate(rig.value, template)
  if (written.kind === 'refused') {
    // What was worked out is not lost because the file could not be written.
    if (!json) show(shell.output, false, rig.value, () => rigLines(rig.value))
    showProblems(shell.output, json, written.problems)
    return exitCodes.refused
  }
  return show(shell.output, json, { ...rig.value, template: template ?? null }, () => [
    ...rigLines(rig.value),
    ...(template === undefined ? [] : [`Drilling template written: ${template}`]),
  ])
}

const rigNamed = async (name: string, place: StorePlace): Promise<Result<AirRig>> => {
  const kind = suctionClassById(name)
  if (kind !== undefined) return ok(airRigOfClass(kind))
  const known = blueprintById(name)
  if (known !== undefined) return airRigOf(known)
  const own = await ownBlueprintsIn(place)
  if (own.kind === 'refused') return own
  const found = own.value.find(({ id }) => id === name)
  if (found !== undefined) return airRigOf(found.blueprint)
  const ids = [...[...blueprints, ...own.value].map(({ id }) => id), ...suctionClassIds]
  const { what, mend } = unknownId('blueprint', name, name, ids)
  return refused(problem('unknown-blueprint', name, what, `${mend}? See thrum blueprint list`))
}

const writeTemplate = async (rig: AirRig, file: string): Promise<Result<null>> => {
  const svg = drillingTemplateSvg(drillingSheetOf(rig))
  try {
    await writeFile(file, svg)
    return ok(null)
  } catch (error) {
    const what = `The template cannot be written here (${(error as Error).message})`
    return refused(problem('cannot-write', file, what, 'Name a file in a folder that is there'))
  }
}
