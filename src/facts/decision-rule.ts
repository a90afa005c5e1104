import type { Source } from '../base/source.ts'

/** What the uncertainty and the rule of decision rest on. */
export const decisionSources: Readonly<Record<'budget' | 'decision' | 'once', Source>> = {
  budget: {
    title: 'GUM (JCGM 100:2008), limits ±a of a specification are rectangular: u = a/√3',
    clause: '4.3.7 (from memory); stated for multimeters',
    url: 'https://www.easymanua.ls/fluke/digital-multimeter/manual?p=41',
    evidence: 'retrieved',
  },
  decision: {
    title: 'ILAC-G8:09/2019, statement of four kinds with a guard band of the expanded uncertainty',
    clause: '4.2.3',
    url: 'https://fliphtml5.com/szbrq/ktfm/ILAC_G8_09_2019_Quy_tac_ra_QD/10',
    evidence: 'retrieved',
  },
  once: {
    title: 'No further guard band where a limit already allows for the uncertainty',
    url: 'https://thelab.asia/decision-rule',
    evidence: 'retrieved',
  },
}
