import { expect } from 'vitest'
import type { BenchJob, Intake } from './bench-job.ts'

/**
 * Whole jobs from "it came in" to "it left", the readings those of common practice for such a fault. Money in pence.
 * Each is driven through the use-cases and once through the page.
 */
export type WholeJob = {
  readonly name: string
  readonly tells: string
  readonly intake: Intake
  readonly run: (job: BenchJob) => Promise<void>
}

const sold = {
  kind: 'left',
  exit: 'sell-working',
  receivedMinor: 8500,
  minutes: 45,
  safety: 'Insulation tester 500 V: 42 MΩ; A. Tester, 3 May',
} as const

export const wholeJobs: readonly WholeJob[] = [
  {
    name: 'dead: live conductor open at the handle entry',
    tells: 'is found with the plug, shortened and refitted, run, and sold',
    intake: { complaints: ['dead'], claim: 'Stopped while my dad was using it.' },
    run: async (job) => {
      expect(job.view().next.kind).toBe('check')
      await job.open('pins-on')
      await job.off('plug-top')
      await job.ohms('fuse-through', 0.2)
      await job.jumps('pins-bend-entry')
      expect(job.chance('flex-entry-line-flickers', 'flex-entry-neutral-flickers')).toBeGreaterThan(0.65)
      await job.off('handle-cover')
      await job.open('line-pin-to-entry')
      await job.ohms('neutral-pin-to-entry', 0.4)
      expect(job.chance('flex-entry-line-flickers', 'flex-entry-line-open')).toBeGreaterThan(0.8)
      const { next, others } = job.view()
      const mends = [next, ...others].filter((move) => move.kind === 'repair')
      const shorten = mends.find((move) => move.repair === 'flex-shorten-entry')
      // Several orders of mending are worth nearly the same; this one is among the best, to within a pound and a half.
      expect(shorten!.expectedMinor).toBeGreaterThan(mends[0].expectedMinor - 150)
      await job.repair('flex-shorten-entry', 'refit', 20, 0)
      await job.on('plug-top', 'handle-cover')
      await job.passGates()
      await job.grade('run-first', 'runs')
      await job.grade('run-full', 'works')
      expect(job.view().worth.bestExit).toBe('sell-working')
      const { state, lines } = await job.note(sold)
      expect(state.left).toMatchObject({ exit: 'sell-working', profitMinor: 8500 - 400 })
      expect(lines.map((line) => line.text).join('\n')).toMatch(/jumps/)
    },
  },

  {
    name: 'dead: flex sound but the switch is burnt',
    tells: 'is told from a broken flex by halves',
    intake: { complaints: ['dead'], paidMinor: 600 },
    run: async (job) => {
      await job.ohms('pins-on', 255)
      await job.off('handle-cover')
      await job.ohms('line-pin-to-entry', 0.4)
      await job.ohms('neutral-pin-to-entry', 0.4)
      await job.ohms('switch-closed', 240)
      expect(job.chance('switch-burnt')).toBeGreaterThan(0.9)
      expect(job.chance('flex-entry-line-open', 'flex-plug-line-open', 'flex-mid-line-open')).toBeLessThan(0.05)
      await job.repair('switch-swap', 'salvaged', 15, 200)
      await job.on('handle-cover')
      await job.passGates()
      await job.grade('run-first', 'runs')
      await job.grade('run-full', 'works')
      const { state } = await job.note(sold)
      expect(state.left?.profitMinor).toBe(8500 - 600 - 200)
      expect(state.fixed.map((fix) => fix.repair)).toEqual(['switch-swap'])
    },
  },

  {
    name: 'dead: plug fuse open because of a short in the flex',
    tells: 'does not stop at the fuse: the short bars all running until it is mended',
    intake: { complaints: ['dead', 'trips-supply'] },
    run: async (job) => {
      await job.off('plug-top')
      await job.open('fuse-through')
      expect(job.chance('plug-fuse-open')).toBeGreaterThan(0.9)
      await job.repair('fuse-new', 'new', 2, 30)
      await job.on('plug-top')
      await job.ohms('pins-on', 0.3)
      const view = job.view()
      expect(view.redFlags).toHaveLength(1)
      expect([view.next, ...view.others].filter((move) => move.kind === 'check' && move.checkKind === 'run')).toEqual(
        [],
      )
      expect(
        await job.refusal({
          kind: 'reading',
          check: 'run-full',
          result: { kind: 'grade', outcome: 'works' },
          minutes: 5,
        }),
      ).toMatch(/run/i)
      await job.ohms('pins-off', 0.3)
      expect(job.chance('flex-short')).toBeGreaterThan(0.9)
      await job.off('handle-cover')
      await job.repair('flex-new', 'salvaged', 25, 150)
      await job.on('handle-cover')
      await job.passGates()
      expect(job.view().redFlags).toEqual([])
      expect(
        await job.refusal({
          kind: 'reading',
          check: 'run-full',
          result: { kind: 'grade', outcome: 'works' },
          minutes: 5,
        }),
      ).toMatch(/First run/)
      await job.grade('run-first', 'runs')
      await job.grade('run-full', 'works')
      const { state } = await job.note(sold)
      expect(state.left?.profitMinor).toBe(8500 - 400 - 30 - 150)
    },
  },

  {
    name: 'intermittent neutral and a stripped belt: two faults',
    tells: 'finds the second after the first is mended',
    intake: { complaints: ['intermittent', 'brush-not-turning'] },
    run: async (job) => {
      await job.jumps('pins-bend-plug-end')
      await job.off('plug-top', 'handle-cover')
      await job.jumps('neutral-core-bend-plug-end')
      await job.ohms('line-core-bend-plug-end', 0.3)
      expect(job.chance('flex-plug-neutral-flickers', 'plug-neutral-terminal-loose')).toBeGreaterThan(0.85)
      await job.repair('flex-shorten-plug', 'refit', 10, 0)
      await job.on('plug-top', 'handle-cover')
      await job.off('sole-plate', 'belt-cover')
      await job.grade('look-belt', 'stripped')
      expect(job.chance('belt-stripped')).toBeGreaterThan(0.75)
      await job.repair('belt-new', 'new', 20, 600)
      await job.on('belt-cover', 'sole-plate')
      await job.passGates()
      await job.grade('run-first', 'runs')
      await job.grade('run-full', 'works')
      const { state } = await job.note(sold)
      expect(state.fixed.map((fix) => fix.repair)).toEqual(['flex-shorten-plug', 'belt-new'])
      expect(state.left?.profitMinor).toBe(8500 - 400 - 600)
    },
  },

  {
    name: 'nothing wrong: the seller’s socket',
    tells: 'is shown by the dead checks and a run, and no part is bought',
    intake: { complaints: ['dead'], paidMinor: 200 },
    run: async (job) => {
      await job.passGates()
      expect(job.view().beforeRunning).toEqual([])
      await job.grade('run-first', 'runs')
      await job.grade('run-full', 'works')
      const view = job.view()
      expect(view.suspects[0]?.name).toBe('Nothing wrong')
      expect(view.worth.bestExit).toBe('sell-working')
      const { state } = await job.note(sold)
      expect(state.spentMinor).toBe(0)
      expect(state.left?.profitMinor).toBe(8500 - 200)
    },
  },

  {
    name: 'motor burnt: the parts are worth more',
    tells: 'stops and breaks for parts when the motor is condemned and a new one costs too much',
    intake: { complaints: ['smell', 'sparks', 'noise'], paidMinor: 300, hourMinor: 1000 },
    run: async (job) => {
      await job.note({ kind: 'confirmed', fault: 'armature-shorted', text: 'varnish smell, black bars' })
      await job.note({ kind: 'confirmed', fault: 'height-drive-stuck', text: 'gear stripped' })
      const view = job.view()
      expect(job.chance('armature-shorted')).toBeGreaterThan(0.9)
      expect(view.next).toMatchObject({ kind: 'exit', exit: 'break-for-parts' })
      const { state } = await job.note({ kind: 'left', exit: 'break-for-parts', receivedMinor: 4200, minutes: 60 })
      expect(state.left).toMatchObject({ exit: 'break-for-parts', profitMinor: 3900 })
      expect(await job.refusal({ kind: 'said', text: 'one more thing' })).toMatch(/broken|parts/i)
    },
  },
]
