import type { Source } from '../base/source.ts'

/** Slip of a brush belt: share of the speed that it loses between motor and roll. */
export const beltSlip = {
  /** Up to here as new; beyond the second it is replaced. */
  newUpTo: 0.03,
  replaceFrom: 0.1,
  source: { title: 'Belt of a brush roll: 1 to 3 % new, above 10 % replaced', evidence: 'judgement' } as Source,
} as const

/** Speeds at which brush rolls turn, rpm. */
export const brushSpeed = {
  low: 2500,
  high: 6500,
  source: {
    title: 'Brush rolls turn at 3000 to 5000, motorised heads at 2500 to 6500 rpm',
    evidence: 'from memory',
  } as Source,
} as const

/** What driving the roll adds to the input power, free of the floor, W. */
export const brushDrag = {
  lowW: 15,
  highW: 40,
  source: { title: 'Brush on less brush off, running free: 15 to 40 W', evidence: 'from memory' } as Source,
} as const

/** Relative standard uncertainty of a speed by tape and strobe or by tone, and of a diameter by calliper on rubber. */
export const brushReading = {
  speed: 0.01,
  diameter: 0.01,
  source: { title: 'Speed by strobe or tone, diameter by calliper', evidence: 'judgement' } as Source,
} as const
