import { describe, expect, it } from 'vitest'
import { noteLines } from '../../../src/bench/lines.ts'
import { blueprintById } from '../../../src/blueprint/library.ts'
import type { Job } from '../../../src/machine/job.ts'
import { machineView } from '../../../src/machine/machine-view.ts'
import { notExplained } from '../../../src/web/machine/not-explained.ts'
import { seenLines } from '../../../src/web/machine/seen-lines.ts'
import { added, log } from '../../support/notes.ts'

const blueprint = blueprintById('bagless-upright')!
const locked = { kind: 'grade', outcome: 'locked' } as const

describe('what was seen of a machine', () => {
  it('has what was tried: what is wrong in words, the rest counted, a later result in place of an earlier', () => {
    const notes = log([
      added({ blueprint: blueprint.id, plate: blueprint.plate }),
      { kind: 'reading', check: 'spin-roll', result: locked, minutes: 1 },
      { kind: 'tried', function: 'wheels', result: 'bad' },
      { kind: 'tried', function: 'wheels', result: 'good' },
      { kind: 'tried', function: 'tools', result: 'bad' },
      { kind: 'struck', note: 'n5', reason: '' },
      { kind: 'tried', function: 'casing', result: 'cannot-tell' },
    ])
    expect(seenLines({ notes, lines: noteLines(notes, blueprint) }, blueprint)).toEqual([
      'Spin the brush roll: Locked',
      '1 thing tried or looked at and good',
    ])
  })
})

describe('a dead machine whose roll is found locked', () => {
  const job: Job = {
    blueprint,
    plate: blueprint.plate,
    complaints: ['dead'],
    missing: [],
    events: [{ kind: 'reading', note: 'n2', check: 'spin-roll', result: locked, instrument: 'budget-multimeter' }],
    off: [],
    hourMinor: 800,
  }
  it('has a jammed roll for certain, and something else besides that leaves it dead', () => {
    const { suspects, together } = machineView(job)
    const [lead] = suspects
    // A roll that does not turn leaves the suction motor running: it makes no machine dead (common practice of the trade).
    expect(lead?.id).toBe('roll-jammed')
    const isDead = (id: string): boolean => (blueprint.faults.find((one) => one.id === id)?.complaints.dead ?? 0) > 0
    const open = notExplained(lead, ['dead'], suspects, blueprint)
    expect(open?.complaint).toBe('dead')
    expect(isDead(open!.first!.id)).toBe(true)
    // The complaint still counts: the likeliest sets pair the roll with a cause of it.
    expect(together[0]?.faults.some(isDead)).toBe(true)
    expect(notExplained(open!.first!, ['dead'], suspects, blueprint)).toBeNull()
    expect(notExplained(lead, [], suspects, blueprint)).toBeNull()
  })
})
