import type { AirRig } from './air-rig.ts'

/** What the drilling template of a rig shows, in millimetres. */
export const drillingSheetOf = (rig: AirRig) => ({
  title: `Suction plates: ${rig.of}`,
  plateMm: rig.plate.sideMm,
  thicknessMm: rig.plate.thicknessMm,
  boreMm: rig.chamber.boreMm,
  holes: rig.holes,
})
