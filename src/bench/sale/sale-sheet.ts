import { problem } from '../../base/problem.ts'
import { ok, refused, type Result } from '../../base/result.ts'
import type { MachineDocument } from '../contract.ts'
import { costsOf } from '../costs.ts'
import { jobOf } from '../job.ts'
import type { SettingsStore } from '../ports.ts'
import { whatToAsk, type AskingDeps } from '../prices/what-to-ask.ts'
import { currentSettings } from '../settings.ts'
import { saleSheetView, type SaleSheetView } from './sheet-view.ts'

export type SheetDeps = AskingDeps & { readonly settings: SettingsStore }

/** The sale sheet of a machine. Refused where its blueprint is not known here. */
export const saleSheetOf = async (deps: SheetDeps, document: MachineDocument): Promise<Result<SaleSheetView>> => {
  const { state, notes } = document
  const blueprint = await deps.blueprintById(state.blueprint)
  if (blueprint === undefined) return refused(unknownBlueprint(state.blueprint))
  const settings = await currentSettings(deps.settings)
  const job = jobOf(state, notes, blueprint, settings.attitude, costsOf(settings, state.currency))
  const asked = await whatToAsk(deps, job, state)
  const asking = asked.kind === 'ok' ? asked.value.asking : null
  return ok(saleSheetView(document, { job, region: settings.region, asking }))
}

const unknownBlueprint = (id: string) =>
  problem('unknown-blueprint', 'blueprint', `The blueprint “${id}” is not known here`, 'Import it first')
