import type { Source } from '../base/source.ts'
import type { Region } from './regions.ts'

type ColourRule = { readonly name: string; readonly source: Source }

const iec: ColourRule = {
  name: 'IEC 60445',
  source: {
    title: 'IEC 60445 (with the former IEC 60446): brown for line, blue for neutral, green-and-yellow only for earth',
    url: 'https://en.wikipedia.org/wiki/IEC_60446',
    evidence: 'retrieved',
  },
}
const american: ColourRule = {
  name: 'American practice',
  source: {
    title: 'American colours of flexible cords, a national deviation from IEC 60445',
    url: 'https://en.wikipedia.org/wiki/IEC_60446',
    evidence: 'retrieved',
  },
}

/** By which rule the cores of a cord are coloured; the colours themselves stand with the wiring. */
export const coreColourRule: Readonly<Record<Region, ColourRule>> = {
  UK: iec,
  EU: iec,
  AU: iec,
  NZ: iec,
  US: american,
  CA: american,
}
