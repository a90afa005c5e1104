import type { Source } from '../base/source.ts'
import type { ApplianceClass, Region } from './regions.ts'

export type Plug = {
  readonly name: string
  readonly ratedA: number
  readonly remarks: readonly string[]
  readonly source: Source
}

const memory = (title: string): Source => ({ title, evidence: 'from memory' })

const british: Plug = {
  name: 'BS 1363 three-pin plug with a fuse',
  ratedA: 13,
  remarks: [
    'Approved make, line and neutral pins sleeved.',
    'On a class II machine the earth pin stays without a wire.',
  ],
  source: {
    title: 'Second-hand electrical goods: approved BS 1363 plug, sleeved pins, correct fuse',
    url: 'https://www.businesscompanion.info/en/quick-guides/product-safety/second-hand-electrical-goods',
    evidence: 'retrieved',
  },
}
const australasian = (earthed: boolean): Plug => ({
  name: earthed
    ? 'AS/NZS 3112 three-pin plug, 10 A'
    : 'AS/NZS 3112 plug, 10 A, two pins or three with the earth unused',
  ratedA: 10,
  remarks: ['Line and neutral pins insulated near the body.'],
  source: memory('AS/NZS 3112, 10 A plugs'),
})
const american15 = (earthed: boolean): Plug => ({
  name: earthed ? 'NEMA 5-15P grounding plug' : 'NEMA 1-15P polarised plug, one blade wide',
  ratedA: 15,
  remarks: ['The wide blade is neutral. Do not file it or change the plug for one that fits either way round.'],
  source: memory('NEC 422.40: a switch in the line asks for a polarised or a grounding plug'),
})

/** The plug that a machine of each class takes. */
export const plugs: Readonly<Record<Region, Readonly<Record<ApplianceClass, Plug>>>> = {
  UK: { I: british, II: british },
  EU: {
    I: {
      name: 'CEE 7/7 plug with side contacts and socket for the earth pin',
      ratedA: 16,
      remarks: [],
      source: memory('CEE 7/7'),
    },
    II: {
      name: 'CEE 7/17 contour plug without earth',
      ratedA: 16,
      remarks: ['It fits either way round; the switch may end up in the neutral, so unplug before any work.'],
      source: memory('CEE 7/17; the flat 2.5 A plug is too small for a vacuum cleaner above 575 W'),
    },
  },
  AU: { I: australasian(true), II: australasian(false) },
  NZ: { I: australasian(true), II: australasian(false) },
  US: { I: american15(true), II: american15(false) },
  CA: { I: american15(true), II: american15(false) },
}

/** Only the British plug has a fuse of its own. */
export const noPlugFuse: Source = memory('Plugs outside the United Kingdom carry no fuse; the branch circuit has it')

/** Reselling a machine with a wired-up plug in the region's own form. */
export const plugDuty: Partial<Readonly<Record<Region, Source>>> = {
  UK: {
    title: 'Plugs and Sockets etc. (Safety) Regulations 1994: supplied with a correctly fused, approved plug',
    clause: 'SI 1994/1768',
    url: 'http://hse.gov.uk/foi/internalops/ocs/400-499/oc489_6.htm',
    evidence: 'retrieved',
  },
}
