import type { Source } from '../base/source.ts'

/** Watts on a plate over volts times amperes: outside these one of the three was misread. */
export const platePowerFactor = {
  low: 0.6,
  high: 1.1,
  source: {
    title: 'Brushed motors run at 0.9 to 1, with electronic speed control down to 0.6; a tenth for rounding',
    evidence: 'judgement',
  } as Source,
} as const

/** Rated current of a motor appliance is the measured one; watts over volts is for want of it. */
export const ratedCurrentSource: Source = {
  title: 'EN 60335-1, rated current: as marked, else as measured in normal operation; watts over volts is a fallback',
  clause: '3.1.6',
  url: 'https://bbs.angui.org/thread-61553-2-1.html',
  evidence: 'retrieved',
}
