import { valueOf } from '../src/base/result.ts'
import { blueprints } from '../src/blueprint/library.ts'
import { explainAir } from '../src/engines/airflow/index.ts'
import { airExplanations } from '../src/machine/air/air-explanations.ts'
import { airFitOf } from '../src/machine/air/air-fit.ts'
import { airMachineOf } from '../src/machine/air/air-machine.ts'
import { airView } from '../src/machine/index.ts'
import { airCoverage } from '../test/support/air-rigs.ts'
import { hole, sealed, suctionAt } from '../test/support/gauge.ts'
import { medianMs } from './median.ts'

const fitBarMs = 30
const verdictBarMs = 150
const draws = 1000
const seed = 90

const blueprint = blueprints.find(({ id }) => id === 'bagged-cylinder')!
const machine = valueOf(airMachineOf(blueprint, blueprint.plate))
const readings = [
  suctionAt(sealed, 20_000),
  suctionAt(hole(13), 12_100),
  suctionAt(hole(19), 7000),
  suctionAt(hole(26), 3100),
  suctionAt(hole(32), 1700),
  suctionAt(sealed, 21_000, { way: 'inlet' }),
  suctionAt(hole(19), 8100, { way: 'inlet' }),
  suctionAt(hole(26), 4000, { way: 'inlet' }),
].map((reading, i) => ({ note: `g${i}`, reading }))

/** Milliseconds of one fit of eight readings, and of the whole verdict with bands, each against sampling. Throws when a bar is passed. */
export const run = () => {
  const even = Object.fromEntries(airExplanations(machine, true).map(({ id }) => [id, 1]))
  const whole = airFitOf(machine, blueprint.plate.voltageV, readings, even)
  const one = { ...whole, hypotheses: whole.hypotheses?.slice(1, 2) }
  const job = {
    blueprint,
    plate: blueprint.plate,
    complaints: ['weak-suction' as const],
    missing: [],
    events: readings.map(({ note, reading }) => ({ kind: 'gauge' as const, note, reading })),
    off: [],
    hourMinor: 800,
  }
  const sampling = { seed, draws }
  const barred = [
    {
      name: 'one fit of eight gauge readings, against 1,000 draws',
      ours: medianMs(() => explainAir(one), 30),
      theirs: medianMs(() => explainAir({ ...one, sampling }), 3),
      bar: fitBarMs,
    },
    {
      name: 'the verdict on a machine’s air with its bands, against 1,000 draws for each explanation',
      ours: medianMs(() => airView(job), 12),
      theirs: medianMs(() => explainAir({ ...whole, sampling }), 3),
      bar: verdictBarMs,
    },
  ]
  for (const { name, ours, bar } of barred) if (ours > bar) throw new Error(`${name}: ${ours} ms, bar ${bar} ms`)
  return barred.map((each) => ({ ...each, ratio: each.theirs / each.ours }))
}

/** How often the stated 90 % bands hold the truth. */
export const coverage = (rigs = 2000): string => {
  const { figures, held } = airCoverage(rigs, seed)
  return `90 % bands of fitted air figures: hold the truth in ${((100 * held) / figures).toFixed(1)} % of ${figures} figures of ${rigs} synthetic rigs`
}
