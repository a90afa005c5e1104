import { figureWithin, strongSuctionFrom, type SaleClaim } from '../../facts/sale-claims.ts'
import { fanForPlate, suctionClassOf } from '../../machine/air/suction-class.ts'
import type { Evidence } from './evidence.ts'
import { no, noteOf, unsaid, yes, type Judged } from './judged.ts'

/** Strong: the hose sealed and the gauge near what its kind gives, since the last repair. */
export function strongSuction(evidence: Evidence, { needs }: SaleClaim): Judged {
  const weak = evidence.seenSince.filter(({ complaints }) => complaints.includes('weak-suction'))
  if (weak.length > 0) return no('Weak suction was noted since the last work', weak.map(noteOf))
  const sealed = evidence.gauge.findLast(
    ({ sinceRepair, reading }) =>
      sinceRepair &&
      reading.read.measure === 'suction' &&
      reading.opening.kind === 'sealed' &&
      reading.tapBefore === undefined,
  )
  if (sealed?.reading.read.measure !== 'suction')
    return unsaid(`No gauge reading since the last repair shows it. It takes ${needs}`)
  const kind = suctionClassOf(evidence.blueprint)
  if (kind.kind === 'refused') return unsaid('What its kind gives is not known, so the figure alone can be said')
  const usualPa = fanForPlate(kind.value.class, evidence.state.plate.powerW).sealedPa
  const shown = `${(sealed.reading.read.suctionPa / 1000).toFixed(1)} kPa sealed, where its kind gives about ${(usualPa / 1000).toFixed(1)} kPa`
  return sealed.reading.read.suctionPa >= strongSuctionFrom.share * usualPa
    ? yes(shown, [sealed.note])
    : no(shown, [sealed.note])
}

const paOf: Readonly<Record<string, number>> = { kpa: 1000, mbar: 100, hpa: 100 }

/** A figure of suction in kPa or mbar beside what the gauge showed. */
export function suctionFigure({ gauge }: Evidence, { needs }: SaleClaim, match: RegExpMatchArray): Judged {
  const saidPa = Number((match[1] ?? '').replace(',', '.')) * (paOf[(match[2] ?? '').toLowerCase()] ?? NaN)
  const read = gauge.flatMap(({ note, reading }) =>
    reading.read.measure === 'suction' ? [{ note, pa: reading.read.suctionPa }] : [],
  )
  const same = read.filter(({ pa }) => Math.abs(pa - saidPa) <= figureWithin.share * saidPa)
  if (same.length > 0) return yes('The gauge showed it', same.map(noteOf))
  return read.length > 0 ? no('The gauge showed another figure', read.map(noteOf)) : unsaid(`It takes ${needs}`)
}
