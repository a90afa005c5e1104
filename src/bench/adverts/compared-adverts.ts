import { z } from 'zod'
import type { QueryDeps } from '../queries.ts'
import { foldNotes } from '../fold.ts'
import type { AdvertState } from './advert-state.ts'
import { calibrationOf, comparedWith, type Calibration, type Compared } from './compared.ts'

/** How the guesses of adverts compare with what came of them: each, the newest first, and all together. */
export type ComparedAdverts = { readonly each: readonly Compared[]; readonly all: readonly Calibration[] }

/** The latest this many that were decided are looked at. */
const mostAdverts = 500

/** What is kept beside an advert's log is its state. */
const stateSchema = z.custom<AdvertState>(
  (value) => z.looseObject({ guess: z.looseObject({}) }).safeParse(value).success,
)

export const comparedAdverts = async (deps: QueryDeps): Promise<ComparedAdverts> => {
  const { items } = await deps.books.logs(deps.bench, 'advert', { open: false, limit: mostAdverts })
  const each: Compared[] = []
  for (const item of items) {
    const compared = await comparedOf(deps, stateSchema.parse(item))
    if (compared !== null) each.push(compared)
  }
  return { each, all: calibrationOf(each) }
}

const comparedOf = async (deps: QueryDeps, state: AdvertState): Promise<Compared | null> => {
  if (state.decided?.kind !== 'bought') return null
  const notes = await deps.store.notes(state.decided.machine)
  if (notes.length === 0) return null
  const machine = foldNotes(notes)
  return comparedWith(state, machine, await deps.blueprintById(machine.blueprint))
}
