export interface HoseConductorsOptions {
  /** Points in the body that feed the two conductors of the hose. */
  readonly line: string
  readonly neutral: string
  readonly bodyCover: string
}
