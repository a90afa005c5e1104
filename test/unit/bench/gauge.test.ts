import { describe, expect, it } from 'vitest'
import { problemText } from '../../../src/base/problem.ts'
import { checkNote } from '../../../src/bench/append.ts'
import { foldNotes } from '../../../src/bench/fold.ts'
import { jobOf } from '../../../src/bench/job.ts'
import { noteLines } from '../../../src/bench/lines.ts'
import type { NoteContentInput } from '../../../src/bench/note.ts'
import { blueprints } from '../../../src/blueprint/library.ts'
import { machineModel } from '../../../src/machine/model.ts'
import { suspectBelief } from '../../../src/machine/suspects.ts'
import type { GaugeReading } from '../../../src/machine/air/gauge-reading.ts'
import { hole, sealed, suctionAt } from '../../support/gauge.ts'
import { added, content, log } from '../../support/notes.ts'
import { gatesPassedOf } from '../../support/pass-gates.ts'

const blueprint = blueprints.find(({ id }) => id === 'bagged-cylinder')!
const cameIn = added({ blueprint: blueprint.id, plate: blueprint.plate, complaints: ['weak-suction'] })
const ready = [cameIn, ...gatesPassedOf(blueprint)]
const gauge = (reading: GaugeReading): NoteContentInput => ({ kind: 'gauge', reading })

const refusals = (notes: readonly NoteContentInput[], reading: GaugeReading): readonly string[] => {
  const result = checkNote(log(notes), content(gauge(reading)), blueprint)
  return result.kind === 'ok' ? [] : result.problems.map(problemText)
}

describe('a gauge reading as a note', () => {
  it('is taken once the machine may be run', () => {
    expect(refusals(ready, suctionAt(hole(19), 7000))).toEqual([])
    expect(refusals([cameIn], suctionAt(hole(19), 7000)).join()).toMatch(/must not be run yet: /)
    const open = { kind: 'opened', cover: 'bag-door', minutes: 1 } as const
    expect(refusals([...ready, open], suctionAt(hole(19), 7000)).join()).toMatch(
      /the lid is off\. Close all covers first: nothing is run with a cover off/,
    )
  })

  it.each<[GaugeReading, string]>([
    [
      { ...suctionAt(sealed, 20_000), way: 'hose' },
      'reading.way: “hose” is not a way in here. Use one of hose-end, inlet.',
    ],
    [
      suctionAt(hole(19), 7000, { tapBefore: 'hose' }),
      'reading.tapBefore: “hose” is not a place to tap here. Use one of bag, pre-motor-filter, motor-fan.',
    ],
    [
      suctionAt(hole(19), 7000, { out: ['motor-fan'] }),
      'reading.out.0: “motor-fan” is not a part that comes out here. Use one of bag, pre-motor-filter, exhaust-filter.',
    ],
    [
      suctionAt(hole(19), 7000, { instrument: 'vane-at-hose' }),
      'reading.instrument: “vane-at-hose” is not a gauge for this here. Use one of digital-manometer-5-psi, digital-manometer-2-psi, dial-gauge, water-column.',
    ],
    [
      suctionAt(sealed, 13_790, { instrument: 'digital-manometer-2-psi' }),
      'reading.read: The gauge is at its end (13.8 kPa), so the true suction may be any beyond it. Read it with a gauge that goes further, or use a larger hole.',
    ],
    [
      suctionAt(sealed, 78_000),
      'reading.read: 78.0 kPa is more than the fan of any vacuum cleaner gives (55.0 kPa). Check the unit and the point.',
    ],
    [
      suctionAt(hole(19), 7),
      'reading.read: 7 Pa is less than this gauge can show: it reads to about 100 Pa. Check the unit: kPa was probably meant.',
    ],
    [
      suctionAt(hole(19), 0),
      'reading.read: A reading of 0 says that nothing is drawn at all. Check that the machine runs and the rig sits tight; if it does not run, enter that as a run check.',
    ],
    [
      {
        ...suctionAt(sealed, 1),
        read: { measure: 'airflow', airflowM3PerS: 0.03 },
        instrument: 'vane-at-hose',
      },
      'reading.opening: Nothing flows where the rig is sealed. Say through what hole the air went.',
    ],
    [
      {
        ...suctionAt(sealed, 1),
        read: { measure: 'tone', toneHz: 1200, soundHz: 600 },
        instrument: 'motor-tone',
      },
      'reading.read: The two pitches are too far apart for one motor: one is probably that of its blades or of a half of it. Compare the same tone of both, an octave up or down.',
    ],
  ])('%j is refused in words', (reading, words) => {
    const [first] = refusals(ready, reading)
    expect(first).toBe(words)
  })

  it('reads in the log as it was made, and its minutes count', () => {
    const notes = log([
      ...ready,
      gauge(suctionAt(hole(19), 7345, { out: ['bag'], inputW: 980 })),
      gauge({
        ...suctionAt(hole(30), 1),
        read: { measure: 'airflow', airflowM3PerS: 0.0302 },
        instrument: 'vane-at-hose',
      }),
    ])
    expect(
      noteLines(notes, blueprint)
        .slice(-2)
        .map(({ text }) => text),
    ).toEqual([
      'Air, 19 mm hole at the end of the hose, without the bag: 7.34 kPa, mains 230 V, 980 W in',
      'Air, 30 mm hole at the end of the hose: 30.2 L/s, mains 230 V',
    ])
    expect(foldNotes(notes).minutes - foldNotes(notes.slice(0, -2)).minutes).toBe(2)
  })
})

describe('what gauge readings do to the suspects', () => {
  const model = machineModel(blueprint, blueprint.plate)
  const chanceOf = (fault: string, contents: readonly NoteContentInput[]): number => {
    const notes = log(contents)
    const { probability } = suspectBelief(model, jobOf(foldNotes(notes), notes, blueprint))
    const index = blueprint.faults.findIndex(({ id }) => id === fault)
    if (index < 0) throw new Error(`no fault ${fault}`)
    return model.sets.reduce((sum, set, s) => sum + (set.includes(index) ? probability[s] : 0), 0)
  }
  const low = [
    gauge(suctionAt(sealed, 15_000)),
    gauge(suctionAt(hole(19), 6200)),
    gauge({ ...suctionAt(sealed, 22_000), way: 'inlet' }),
    gauge({ ...suctionAt(hole(19), 9800), way: 'inlet' }),
  ]

  it('a leak between hose end and inlet makes the hose likely, and dead motors impossible', () => {
    const leaks = ['hose-split-cuff', 'hose-split-middle', 'cuff-catch-broken', 'grip-slider-open']
    const sum = (contents: readonly NoteContentInput[]): number =>
      leaks.reduce((all, fault) => all + chanceOf(fault, contents), 0)
    expect(sum(ready)).toBeLessThan(0.5)
    expect(sum([...ready, ...low])).toBeGreaterThan(0.9)
    expect(chanceOf('field-open', [...ready, ...low])).toBeLessThan(0.005)
  })

  it('the order of readings of one set changes nothing, and a struck one does not count', () => {
    const one = chanceOf('hose-split-cuff', [...ready, ...low])
    expect(chanceOf('hose-split-cuff', [...ready, ...low.toReversed()])).toBeCloseTo(one, 9)
    const slip = gauge(suctionAt(hole(30), 14_000))
    const struck = [...ready, ...low, slip]
    const strike = { kind: 'struck', note: `n${struck.length}` } as const
    expect(chanceOf('hose-split-cuff', [...struck, strike])).toBeCloseTo(one, 9)
  })

  it('readings after a repair are of another machine than those before it', () => {
    const mended = { kind: 'repaired', repair: 'hose-new', option: 'new', minutes: 5, costMinor: 1200 } as const
    const well = [gauge(suctionAt(sealed, 22_000)), gauge(suctionAt(hole(19), 8600)), gauge(suctionAt(hole(30), 2300))]
    const after = [...ready, ...low, mended, ...gatesPassedOf(blueprint), ...well]
    for (const fault of ['hose-split-cuff', 'hose-split-middle']) expect(chanceOf(fault, after)).toBeLessThan(0.02)
  })
})
