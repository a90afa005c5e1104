import type { Blueprint } from '../../blueprint/schema.ts'
import { shareOfStock, type PartState } from '../shelf/part-state.ts'
import { shelf } from '../shelf/shelf-commands.ts'
import type { CommandDeps } from '../commands.ts'
import type { Story } from './turns.ts'

/** A part on the shelf as the one who put it there thinks of it. */
export type Kept = {
  readonly id: string
  readonly blueprint: string
  readonly part: string
  readonly isBought: boolean
}

/** What the machines of the year have in common: the shelf, and the start of further stories. */
export type Trade = {
  readonly begin: (story: Story) => void
  readonly kept: Kept[]
}

/** One of the shelf that is of use, and what it stands at. */
export type Useful = { readonly id: string; readonly isBought: boolean; readonly costMinor: number }

/** A sound one of this part of this kind of machine, if there is one. */
export const fromShelf = async (
  { kept }: Trade,
  deps: CommandDeps,
  blueprint: Blueprint,
  part: string,
): Promise<Useful | null> => {
  for (const one of kept.filter((each) => each.blueprint === blueprint.id && each.part === part)) {
    const state = (await shelf.document(deps, one.id))?.state
    if (state !== undefined && isFree(state)) {
      return { id: one.id, isBought: one.isBought, costMinor: shareOfStock(state.costMinor, state.count, 1) }
    }
  }
  return null
}

const isFree = ({ count, reservedFor }: PartState): boolean => count > 0 && reservedFor === null
