import { describe, expect, it } from 'vitest'
import { readingOf, setUpOf, type Kept } from '../../../src/web/air/draft.ts'
import { inGaugeUnits, threeFigures } from '../../../src/web/air/gauge-units.ts'
import { holesFromText, isPlaceOf, placeOf, type Place } from '../../../src/web/air/place.ts'
import { problemsOf } from '../../../src/web/air/problem-place.ts'
import { setUpName } from '../../../src/web/air/set-up-name.ts'

const place: Place = {
  way: 'hose-end',
  opening: 'hole',
  holeMm: '19',
  tapBefore: '',
  out: [],
  measure: 'suction',
}
const kept: Kept = {
  gauge: 'water-column',
  thicknessMm: '',
  edgeMm: '',
  make: 'machined',
  mains: '',
  watts: '',
  barometer: '',
  temperature: '',
  humidity: '',
  sound: '',
}
const shown = { text: '9,6', suctionUnit: 'kPa', airflowUnit: 'L/s' } as const

describe('a gauge reading as it is entered', () => {
  it('takes the chosen unit for a bare number and the written one where there is one', () => {
    expect(readingOf(place, kept, shown)).toMatchObject({
      kind: 'ok',
      value: {
        way: 'hose-end',
        opening: { kind: 'hole', diameterM: 0.019, thicknessM: 0.001, edgeRadiusM: 0, make: 'machined' },
        read: { measure: 'suction', suctionPa: 9600 },
        instrument: 'water-column',
      },
    })
    // 1 mmHg of mercury at 0 °C is 133.322 Pa (NIST SP 811, appendix B.8; from memory).
    const mercury = readingOf(place, kept, { ...shown, text: '72 mmHg' })
    const read = mercury.kind === 'ok' ? mercury.value.read : null
    expect(read?.measure === 'suction' ? read.suctionPa : 0).toBeCloseTo(72 * 133.322, 0)
  })

  it('reads an airflow with a vane, and a pitch beside that of a sound motor', () => {
    const airflow = readingOf({ ...place, measure: 'airflow' }, kept, { ...shown, text: '50', airflowUnit: 'cfm' })
    // A cubic foot is 28.3168 litres (from memory).
    const drawn = airflow.kind === 'ok' && airflow.value.read.measure === 'airflow' ? airflow.value.read : null
    expect(drawn?.airflowM3PerS).toBeCloseTo((50 * 0.0283168) / 60, 7)
    expect(airflow).toMatchObject({ value: { instrument: 'vane-at-hose' } })
    const tone = readingOf({ ...place, measure: 'tone' }, { ...kept, sound: '640 Hz' }, { ...shown, text: '590' })
    expect(tone).toMatchObject({
      value: { read: { measure: 'tone', toneHz: 590, soundHz: 640 }, instrument: 'motor-tone' },
    })
  })

  it('keeps what was given meanwhile, and takes half of the humidity for granted', () => {
    const given = { ...kept, mains: '231', watts: '1.1 kW', barometer: '1009', temperature: '64 °F' }
    const setUp = setUpOf(place, given)
    expect(setUp).toMatchObject({ value: { mainsV: 231, inputW: 1100, room: { relativeHumidity: 0.5 } } })
    const room = setUp.kind === 'ok' ? setUp.value.room : undefined
    expect(room?.barometerPa).toBeCloseTo(100_900, 6)
    expect(room?.temperatureC).toBeCloseTo(((64 - 32) * 5) / 9, 9)
  })

  it.each([
    [{ ...place, holeMm: '' }, {}, 'opening'],
    [{ ...place, holeMm: 'wide' }, {}, 'opening'],
    [place, { thicknessMm: 'thin' }, 'opening.thicknessM'],
    [place, { mains: 'low' }, 'mainsV'],
    [place, { watts: '-5' }, 'inputW'],
    [place, { barometer: '1013' }, 'room.temperatureC'],
    [place, { temperature: '18' }, 'room.barometerPa'],
    [place, { barometer: '1013', temperature: '18', humidity: '130' }, 'room.relativeHumidity'],
  ] as const)('tells a slip at its field: %o %o', (where, change, field) => {
    const reading = readingOf(where, { ...kept, ...change }, shown)
    expect(reading.kind === 'refused' && problemsOf(reading.problems, field)).toHaveLength(1)
  })

  it.each(['', 'lots', '-3', '12 V'])('refuses “%s” for what a gauge shows', (text) => {
    const reading = readingOf(place, kept, { ...shown, text })
    expect(reading.kind === 'refused' && problemsOf(reading.problems, 'read')).toHaveLength(1)
  })

  it('tells all slips at once', () => {
    const reading = readingOf({ ...place, holeMm: '' }, { ...kept, mains: 'x' }, { ...shown, text: 'y' })
    expect(reading.kind === 'refused' && reading.problems).toHaveLength(3)
  })

  it('finds a place back from its own reading, and tells it from others', () => {
    const setUp = setUpOf({ ...place, out: ['bag', 'filter'] }, kept)
    if (setUp.kind === 'refused') throw new Error('refused')
    const back = placeOf(setUp.value)
    expect(isPlaceOf({ ...back, out: ['filter', 'bag'] }, setUp.value)).toBe(true)
    for (const other of [{ holeMm: '20' }, { way: 'inlet' }, { out: [] }, { opening: 'sealed' }] as const)
      expect(isPlaceOf({ ...back, ...other }, setUp.value)).toBe(false)
  })

  it('reads the holes of a rig from one line', () => {
    expect(holesFromText('19, 13 and 25.4 mm; 19')).toEqual([0.013, 0.019, 0.0254])
    expect(holesFromText('none, 0, 900')).toEqual([])
  })
})

describe('units of the gauge in hand', () => {
  it('rewrites what the view says in kPa and L/s', () => {
    // 1 inH2O is 0.249089 kPa; 1 cfm 0.471947 L/s (NIST SP 811, appendix B.8; from memory).
    expect(inGaugeUnits('6.89 to 8.05 kPa', { suction: 'inH2O', airflow: 'L/s' })).toBe('27.7 to 32.3 inH2O')
    expect(inGaugeUnits('24.3 L/s', { suction: 'mbar', airflow: 'cfm' })).toBe('51.5 cfm')
    expect(inGaugeUnits('7.34 kPa', { suction: 'kPa', airflow: 'cfm' })).toBe('7.34 kPa')
  })

  it.each([
    [21.78, '21.8'],
    [7.341, '7.34'],
    [1840.4, '1840'],
    [99.97, '100'],
    [-0.214, '−0.21'],
    [0.0001, '0'],
  ])('shows %f with three figures', (value, text) => expect(threeFigures(value)).toBe(text))
})

describe('the name of a set-up', () => {
  const ways = [
    {
      id: 'hose-end',
      name: 'End of the hose',
      how: '',
      taps: [{ part: 'bag', name: 'Bag' }],
      outs: [{ part: 'bag', name: 'Bag' }],
    },
  ]
  it.each([
    [{}, '19 mm hole at the end of the hose'],
    [{ opening: 'sealed', tapBefore: 'bag' }, 'sealed at the end of the hose, tapped before the bag'],
    [{ out: ['bag'], measure: 'airflow' }, '19 mm hole at the end of the hose, without the bag, airflow with a vane'],
  ] as const)('reads as a sentence part: %o', (change, name) =>
    expect(setUpName({ ...place, ...change }, ways)).toBe(name),
  )
})
