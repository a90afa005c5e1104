export interface LeadOptions {
  /** Where the flex ends, as “the handle”. */
  readonly entry: string
  /** The cover behind which the flex’s far ends can be reached. */
  readonly entryCover: string
  readonly lengthM: number
  readonly areaMm2: number
  /** Rating of the fuse in the plug; a moulded plug without a fuse has null. */
  readonly fuseA: number | null
  /** An earth core besides line and neutral. */
  readonly earthed: boolean
}
