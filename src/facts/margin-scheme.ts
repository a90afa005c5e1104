import type { Source } from '../base/source.ts'
import type { Region } from './regions.ts'

/** What second-hand margin taxation goes by, where it is the same for the whole region. */
export type MarginScheme = {
  /** The rate that goods are sold at, per cent; null where each member state has its own. */
  readonly ratePercent: number | null
  /** Dearest item that may be reckoned all together, minor units; null where there is no such limit, or it is not known. */
  readonly globalItemMinor: number | null
  /** The year that this is known for. */
  readonly asOf: string
  readonly source: Source
}

/** The schemes known here. Other regions tax second-hand goods otherwise, and are left out. */
export const marginSchemes: Readonly<Partial<Record<Region, MarginScheme>>> = {
  UK: {
    ratePercent: 20,
    globalItemMinor: 50_000,
    asOf: '2026',
    source: {
      title: 'HMRC guidance, Using the global accounting VAT margin scheme; HMRC manual VATMARG03050',
      clause: 'VAT (Special Provisions) Order 1995, articles 12 and 13',
      evidence: 'retrieved',
    },
  },
  EU: {
    ratePercent: null,
    globalItemMinor: null,
    asOf: '2006 on',
    source: { title: 'Directive 2006/112/EC', clause: 'articles 312 to 318', evidence: 'from memory' },
  },
}
