export interface SuctionMotorOptions {
  /** Where its push-on is fed from: `cutout.out`, or `motor.feed` where there is no cut-out. */
  readonly feed: 'cutout.out' | 'motor.feed'
  /** Its share of the power on the plate. */
  readonly shareOfPlate: number
  /** False where the dirt goes through a fan of its own: the motor has only a cooling fan. */
  readonly makesSuction: boolean
  readonly motorCover: string
  readonly motorEnd: string
  readonly fanCover: string
}
