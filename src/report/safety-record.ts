/** What a safety record shows, all in words: worked out elsewhere, so that the page, the PDF and the command line say the same. */
export type SafetyRecord = {
  readonly machine: {
    readonly name: string
    readonly architecture: string
    /** `230 V, 50 Hz, 1200 W, class II, 6 kg`. */
    readonly plate: string
    readonly lead: string
  }
  /** What was repaired and with which parts, one line each with its day. */
  readonly work: readonly string[]
  readonly rules: { readonly region: string; readonly name: string; readonly edition: string; readonly id: string }
  readonly steps: readonly SafetyRecordStep[]
  readonly instruments: readonly { readonly name: string; readonly checkedOn: string }[]
  readonly verdict: {
    readonly kind: 'fit' | 'not-fit' | 'not-proven'
    readonly title: string
    readonly sentence: string
  }
  /** Whether its plate was looked up in the recall list of the region. */
  readonly recall: string
  /** Why it is sold though it is not proved fit; null where nobody overruled the verdict. */
  readonly overruled: string | null
  /** What made an earlier proof void; null where nothing did. */
  readonly voided: string | null
  readonly decisionRule: string
  /** Who made the checks, and the day of the last of them: `14 March 2026`. */
  readonly madeBy: string
  readonly madeOn: string
  /** What it does and does not prove, one sentence each. */
  readonly remarks: readonly string[]
  /** What the law of the region asks of who sells a used machine. */
  readonly selling: readonly string[]
  readonly sources: readonly string[]
  /** Where the record can be looked at again: machine and version of its notes. */
  readonly reference: string
}

export type SafetyRecordStep = {
  readonly title: string
  /** `passed`, `failed`, `not proven`, `not done`, `does not apply`. */
  readonly state: string
  /** Why it does not apply or is not asked for; empty where there is nothing to say. */
  readonly why: string
  readonly readings: readonly SafetyRecordReading[]
}

export type SafetyRecordReading = {
  /** Where it was taken, or what was looked at. */
  readonly where: string
  readonly read: string
  readonly limit: string
  readonly uncertainty: string
  readonly instrument: string
  readonly sentence: string
}
