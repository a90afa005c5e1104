import { existsSync } from 'node:fs'
import { join } from 'node:path'
import { ok, type Result } from '../base/result.ts'
import type { OwnBlueprint } from '../bench/own-blueprint.ts'
import { openBenchStore, type StorePlace } from '../store/open-bench-store.ts'

/** One's own blueprints where the bench is kept; none when nothing was ever kept there. Refused when the store cannot be read. */
export const ownBlueprintsIn = async (place: StorePlace): Promise<Result<readonly OwnBlueprint[]>> => {
  if (place.database === undefined && !existsSync(join(place.folder, 'bench.sqlite'))) return ok([])
  const opened = await openBenchStore(place)
  if (opened.kind === 'refused') return opened
  try {
    return ok(await opened.value.blueprints.list())
  } finally {
    await opened.value.close()
  }
}
