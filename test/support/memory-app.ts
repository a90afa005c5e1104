import type { MachineView } from '../../src/machine/view.ts'
import { makeApp, type AppDeps } from '../../src/server/app.ts'
import { memoryBench } from '../../src/store/memory/bench.ts'
import { memoryBlueprintStore } from '../../src/store/memory/blueprint-store.ts'
import { memorySettingsStore } from '../../src/store/memory/settings-store.ts'
import { noPhotos } from './no-photos.ts'
import { tinyBlueprint } from './tiny-blueprint.ts'

/** The program's addresses over stores in memory, with one small blueprint and a machine view that works nothing out. */
export const appWith = (over: Partial<AppDeps> = {}) => {
  let ids = 0
  return makeApp({
    photos: noPhotos,
    benches: { own: memoryBench(), demo: memoryBench() },
    blueprints: [tinyBlueprint],
    ownBlueprints: memoryBlueprintStore(),
    settings: memorySettingsStore(),
    machineView: (job) => ({ suspects: [], events: job.events.length }) as unknown as MachineView,
    now: () => '2026-03-14T10:00:00.000Z',
    newId: () => `id-${++ids}`,
    pages: new Map(),
    hosts: null,
    log: () => {},
    ...over,
  })
}
