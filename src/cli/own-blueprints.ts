import { existsSync } from 'node:fs'
import { join } from 'node:path'
import { ok, type Result } from '../base/result.ts'
import type { OwnBlueprint } from '../bench/own-blueprint.ts'
import { openStore } from '../store/sqlite/open-store.ts'

/** One's own blueprints in a data folder; none when nothing was ever kept there. Refused when the store cannot be read. */
export const ownBlueprintsIn = async (folder: string): Promise<Result<readonly OwnBlueprint[]>> => {
  if (!existsSync(join(folder, 'bench.sqlite'))) return ok([])
  const opened = await openStore({ folder })
  if (opened.kind === 'refused') return opened
  try {
    return ok(await opened.value.blueprints.list())
  } finally {
    await opened.value.close()
  }
}
