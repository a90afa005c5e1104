import { countryOfRegion, openRepairColumns } from '../../facts/open-repair-data.ts'
import type { Cell } from '../../base/cell.ts'
import type { SettingsStore } from '../ports.ts'
import type { QueryDeps } from '../queries.ts'
import { currentSettings } from '../settings.ts'
import { recordRow, toRecord } from './to-record.ts'

export type ExportDeps = QueryDeps & { readonly settings: SettingsStore }

/** Rows fetched together. */
const atOnce = 200

/**
 * The closed machines of a bench as open repair records, a stretch at a time. Virtual machines are left out, and so are records that
 * were taken in: they are somebody else's to give out.
 * @param asked the name under which the data is given out, and the country where it is not that of the settings
 */
export const openDataFile = async (
  deps: ExportDeps,
  asked: { readonly provider?: string | undefined; readonly country?: string | undefined } = {},
): Promise<{
  readonly header: readonly string[]
  readonly stretches: AsyncGenerator<readonly (readonly Cell[])[]>
}> => {
  const { region } = await currentSettings(deps.settings)
  const grounds = { provider: asked.provider ?? '', country: asked.country ?? countryOfRegion[region] }
  return { header: openRepairColumns, stretches: rows(deps, grounds) }
}

async function* rows(
  { books, bench, blueprintById }: ExportDeps,
  grounds: { readonly provider: string; readonly country: string },
): AsyncGenerator<readonly (readonly Cell[])[]> {
  let after: number | undefined
  for (;;) {
    const page = await books.machines(bench, { open: false, limit: atOnce, after })
    const made = await Promise.all(
      page.items.map(async (state) => toRecord(state, (await blueprintById(state.blueprint)) ?? null, grounds)),
    )
    yield made.flatMap((record) => (record === null ? [] : [recordRow(record)]))
    if (page.after === null) return
    after = page.after
  }
}
