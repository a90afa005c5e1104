import { auRepair, auService } from './profiles-au-nz.ts'
import { eu2008, euRecurrent, euRepair } from './profiles-eu.ts'
import { routineTest, typeTests } from './profiles-reference.ts'
import { ukCode4, ukCode5 } from './profiles-uk.ts'
import { canada, us } from './profiles-us-ca.ts'
import type { SafetyProfile } from './safety-limits.ts'

/** All profiles. Of those of one region, the first is taken unless another is asked for. */
export const safetyProfiles: readonly SafetyProfile[] = Object.freeze([
  ukCode5,
  euRepair,
  auRepair,
  us,
  canada,
  euRecurrent,
  auService,
  ukCode4,
  eu2008,
  routineTest,
  typeTests,
])
