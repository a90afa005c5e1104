import type { Source } from '../base/source.ts'

/** Pins of a pulled plug may hold this much after this long. */
export const pulledPlug = {
  voltageV: 34,
  afterS: 1,
  source: {
    title: 'IEC 60335-1, voltage between the pins one second after the plug is pulled',
    clause: '22.5',
    url: 'http://bbs2.angui.org/forum.php?goto=nextnewset&mod=redirect&tid=71620',
    evidence: 'retrieved',
  } as Source,
} as const
