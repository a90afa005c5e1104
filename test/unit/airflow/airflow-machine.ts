import { airFitSchema, type AirFit } from '../../../src/engines/airflow/index.ts'

/** An invented cylinder: hose, filter, fan; it may leak at the hose's cuff and at the lid, and has a bleed valve. */
export const fitInput = (readings: readonly unknown[], more: Readonly<Record<string, unknown>> = {}) => ({
  network: {
    losses: 'room-density',
    branches: [
      { kind: 'loss', id: 'hose', from: 'mouth', to: 'bag', quadraticPaS2PerM6: 4e6 },
      { kind: 'loss', id: 'filter', from: 'bag', to: 'eye', linearPaSPerM3: 2e4 },
      {
        kind: 'fan',
        id: 'fan',
        from: 'eye',
        to: 'room',
        curve: { kind: 'power', sealedPa: '22 kPa', openM3PerS: '45 L/s' },
      },
    ],
  },
  leaks: [
    { id: 'cuff', name: 'hose cuff', node: 'mouth' },
    { id: 'lid', name: 'bag lid', node: 'bag' },
  ],
  bleeds: [{ id: 'bleed', name: 'bleed valve', node: 'eye' }],
  plates: [
    { id: '13', diameterM: '13 mm' },
    { id: '19', diameterM: '19 mm' },
    { id: '30', diameterM: '30 mm' },
  ],
  instruments: [
    { id: 'gauge', gain: 0.005, step: 100, repeatability: 0.01, fullScale: 34_474 },
    { id: 'tone', measures: 'speed', gain: 0.02, step: 0, repeatability: 0.005 },
  ],
  readings,
  ...more,
})

export const fitOf = (readings: readonly unknown[], more: Readonly<Record<string, unknown>> = {}): AirFit =>
  airFitSchema.parse(fitInput(readings, more))

type More = Readonly<Record<string, unknown>>

/** A suction reading with a plate at the mouth, or sealed. */
export const suctionAt = (name: string, plate: string | null, value: unknown, more: More = {}) => ({
  id: name,
  name,
  measure: 'suction',
  node: 'mouth',
  openings: plate === null ? [] : [{ node: 'mouth', plate }],
  mainsRatio: 1,
  instrument: 'gauge',
  value,
  ...more,
})

/** The gauge on the machine's own inlet to the fan, everything before it taken off. */
export const fanSealed = (value: unknown) =>
  suctionAt('fan sealed', null, value, { node: 'eye', removed: ['hose', 'filter', 'cuff', 'lid'] })

const candidate = (name: string, more: More) => {
  const { value: _, ...rest } = suctionAt(name, null, 0, more)
  return rest
}

export const candidates = [
  candidate('fan alone sealed', { node: 'eye', removed: ['hose', 'filter', 'cuff', 'lid'] }),
  candidate('13 mm', { openings: [{ node: 'mouth', plate: '13' }] }),
  candidate('across the hose', { node: 'bag', against: 'mouth', openings: [{ node: 'mouth', plate: '30' }] }),
]
