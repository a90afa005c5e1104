/** What a sale sheet shows a buyer, all in words; worked out elsewhere. */
export type SalePaper = {
  readonly title: string
  /** `£45.00`; empty where none is known. */
  readonly price: string
  readonly sections: readonly { readonly name: string; readonly lines: readonly string[] }[]
  /** The looks of each part that was graded, a line each. */
  readonly condition: readonly string[]
  /** In their order; JPEG. */
  readonly photos: readonly { readonly alt: string; readonly jpeg: Uint8Array }[]
  /** What a dagger means; empty where none stands. */
  readonly daggerWords: string
  /** `14 March 2026` */
  readonly on: string
  /** Machine and version of its notes. */
  readonly reference: string
}
