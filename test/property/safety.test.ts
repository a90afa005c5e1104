import { describe, expect, it } from 'vitest'
import { blueprints } from '../../src/blueprint/library.ts'
import { hiddenTruth, machineModel, machineView, playMove } from '../../src/machine/index.ts'
import type { Job } from '../../src/machine/job.ts'
import { gateStates, redFlags } from '../../src/machine/running.ts'

/**
 * The rule of the moves: nothing that runs the machine is ever offered before the first look and the dead checks have passed,
 * nor while a red flag is open, nor with a cover off; and the plan comes to an end. Held over whole virtual jobs.
 */
/** The deepest blueprint in six jobs, each other architecture in one; another mains changes no move. */
const seedsOf = (id: string): readonly number[] =>
  id === 'bagged-upright-two-motors' ? [11, 12, 13, 14, 15, 16] : /-(120-v|moulded-plug)$/.test(id) ? [] : [12]
const played = blueprints.filter(({ id }) => seedsOf(id).length > 0)
const mostMoves = 60

describe.each(played.map((blueprint) => [blueprint.id, blueprint] as const))('running %s', (id, blueprint) => {
  const model = machineModel(blueprint, blueprint.plate)

  it.each(seedsOf(id))(
    'is offered only when it is allowed, to the end of the job with seed %i',
    { timeout: 120_000 },
    (seed) => {
      const { complaints } = hiddenTruth(model, seed)
      let job: Job = { blueprint, plate: blueprint.plate, complaints, missing: [], events: [], off: [], hourMinor: 800 }
      for (let move = 0; move < mostMoves; move++) {
        const view = machineView(job)
        const running = [view.next, ...view.others].filter(
          (m) =>
            m.kind === 'check' &&
            (m.checkKind === 'run' ||
              blueprint.checks.some((c) => c.id === m.id && c.kind === 'air' && c.driven !== undefined)),
        )
        const open = blueprint.checks.filter(
          (check) => check.beforeRunning && gateStates(job).get(check.id) !== 'passed',
        )
        if (open.length > 0 || redFlags(job).length > 0) expect(running.map((m) => m.id)).toEqual([])
        for (const run of running)
          expect(run.close.map((cover) => cover.id).toSorted()).toEqual([...job.off].toSorted())
        if (view.next.kind === 'exit') return
        job = playMove(job, view.next, seed)
      }
      expect.fail(`no end after ${mostMoves} moves`)
    },
  )
})
