export interface SuctionMotorOptions {
  /** Where its push-on is fed from: `cutout.out`, or `motor.feed` where there is no cut-out. */
  readonly feed: 'cutout.out' | 'motor.feed'
  /** Its share of the power on the plate. */
  readonly shareOfPlate: number
  readonly motorCover: string
  readonly motorEnd: string
  readonly fanCover: string
}
