import { benchSpread, contactOhm, copperTemperature, soundShare } from '../../facts/copper.ts'
import type { TestInstrument } from '../../facts/test-instruments.ts'
import { amountText, figures } from './amount-text.ts'
import { copperRatio, leadResistance, seriesOhm } from './conductor.ts'
import { judgeReading } from './judge.ts'
import type { Judgement } from './judgement.ts'
import type { Reading } from './instrument-reading.ts'
import { conductorSizes, sizeText, type ConductorSize } from './sizes.ts'

/** A cable in hand that claims a size, and what was measured on it. */
export type MeasuredCable = {
  readonly size: ConductorSize
  readonly lengthM: number
  /** Cores measured one after another: 1, or 2 with the far ends joined. */
  readonly conductors: number
  readonly temperatureC: number
  readonly isTinned: boolean
  /** Whether plug, terminals or a reel were in the path. */
  readonly hasContacts: boolean
  readonly reading: Reading
  readonly instrument: Pick<TestInstrument, 'name' | 'functions'>
}

export type CableFinding = 'as-claimed' | 'too-much' | 'too-little' | 'cannot-tell'

export type CableVerdict = {
  readonly kind: CableFinding
  /** The most that sound copper of the size and length has at this temperature, contacts with it where there are any. */
  readonly maximumOhm: number
  readonly usualOhm: number
  readonly judgement: Judgement
  /** Area of copper that the reading speaks for, smallest and largest; null where the uncertainty leaves it open. */
  readonly copperMm2: { readonly from: number; readonly to: number | null } | null
  /** Sizes of the table whose sound copper could read this. */
  readonly couldBe: readonly string[]
  readonly sentence: string
}

const plainLimit = {
  linear: null,
  sense: 'at-most',
  testVoltageV: null,
  leastTestCurrentA: null,
  includesUncertainty: false,
} as const

/**
 * Whether a cable's copper is what it claims to be: the reading against the most that the size and length can have
 * (IEC 60228, to the temperature by the exact factor). Length and temperature are counted in the uncertainty.
 */
export const cableVerdict = (cable: MeasuredCable): CableVerdict => {
  const { size, lengthM, conductors, temperatureC, isTinned } = cable
  const copper = leadResistance(size, lengthM, conductors, temperatureC, isTinned)
  const contactsOhm = cable.hasContacts ? contactOhm.high : 0
  const maximumOhm = copper.maximumOhm + contactsOhm
  const warmth = benchSpread.temperatureC / (copperTemperature.exact.zeroC + temperatureC)
  const judgement = judgeReading('resistance', cable.reading, cable.instrument, { ...plainLimit, value: maximumOhm }, [
    {
      name: 'length of the cable',
      distribution: 'rectangular',
      halfWidth: copper.maximumOhm * benchSpread.lengthShare,
    },
    { name: 'temperature of the copper', distribution: 'rectangular', halfWidth: copper.maximumOhm * warmth },
  ])
  const band = readBand(judgement, contactsOhm)
  const kind = findingOf(judgement, band, copper.maximumOhm)
  return {
    kind,
    maximumOhm,
    usualOhm: copper.usualOhm,
    judgement,
    copperMm2: band === null ? null : copperArea(cable, band),
    couldBe: band === null ? [] : sizesThatCouldBe(cable, band),
    sentence: sentenceOf(kind, cable, judgement, maximumOhm),
  }
}

type Band = { readonly fromOhm: number; readonly toOhm: number }

/** Between what the copper's resistance lies, contacts taken off; null where the instrument shows none. */
const readBand = (judgement: Judgement, contactsOhm: number): Band | null => {
  const { value, uncertainty, shown } = judgement
  if (uncertainty === null || shown !== 'figure') return null
  return { fromOhm: Math.max(0, value - uncertainty.expanded - contactsOhm), toOhm: value + uncertainty.expanded }
}

const findingOf = (judgement: Judgement, band: Band | null, maximumOhm: number): CableFinding => {
  if (band !== null && band.toOhm < maximumOhm * soundShare.suspicious) return 'too-little'
  switch (judgement.kind) {
    case 'pass':
    case 'pass-within-uncertainty':
      return 'as-claimed'
    case 'fail':
      return 'too-much'
    case 'fail-within-uncertainty':
    case 'not-provable':
      return 'cannot-tell'
  }
}

/** Area goes as one over resistance; sound copper has its maximum or somewhat less. */
const copperArea = (cable: MeasuredCable, band: Band) => {
  const { size, lengthM, conductors, temperatureC, isTinned } = cable
  const ohmMm2 = leadResistance(size, lengthM, conductors, temperatureC, isTinned).maximumOhm * size.areaMm2
  return { from: (ohmMm2 * soundShare.least) / band.toOhm, to: band.fromOhm > 0 ? ohmMm2 / band.fromOhm : null }
}

/** A size could be it where what sound copper of it reads meets what this one reads. */
const sizesThatCouldBe = (cable: MeasuredCable, band: Band): readonly string[] =>
  conductorSizes
    .filter((size) => (size.awg === null) === (cable.size.awg === null))
    .filter((size) => {
      const perKm = cable.isTinned ? size.maximumTinnedOhmPerKm : size.maximumOhmPerKm
      const most = seriesOhm(perKm, cable.lengthM, cable.conductors) * copperRatio(cable.temperatureC)
      return most >= band.fromOhm && most * soundShare.least <= band.toOhm
    })
    .map(({ id }) => id)

const sentenceOf = (kind: CableFinding, cable: MeasuredCable, judgement: Judgement, maximumOhm: number): string => {
  const cores = cable.conductors === 1 ? '' : `, ${cable.conductors} cores one after another,`
  const length = `${figures(cable.lengthM)} m of ${sizeText(cable.size)}${cores}`
  const read = `${judgement.shown === 'above' ? 'More than ' : ''}${amountText(judgement.value, 'ohm')}`
  const most = amountText(maximumOhm, 'ohm')
  switch (kind) {
    case 'as-claimed':
      return judgement.kind === 'pass'
        ? `${read}, and ${length} has at most ${most}: the copper is what it claims to be.`
        : `${read}, and ${length} has at most ${most}: nothing speaks against the copper, but the meter does not prove it.`
    case 'too-much':
      return `${read} where ${most} is the most that ${length} can have: thinner copper, copper over another metal, or a bad joint.`
    case 'too-little':
      return `${read} is too little for ${length} (at most ${most}, and not much below it): measure the length and null the leads again, or the copper is thicker than it says.`
    case 'cannot-tell':
      return `${read} against at most ${most} for ${length}: this meter cannot tell. ${judgement.sentence}`
  }
}
