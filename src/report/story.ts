/** What a story shows, all in words and shapes: worked out elsewhere. */
export type Story = {
  readonly title: string
  readonly about: string
  readonly dates: string
  /** Said of what does not exist; empty for a real machine. */
  readonly invented: string
  readonly claimed: string
  readonly found: readonly string[]
  readonly repairs: readonly string[]
  readonly pairs: readonly { readonly before: StoryPhoto; readonly after: StoryPhoto }[]
  readonly readings: readonly { readonly name: string; readonly read: string; readonly sound: string }[]
  readonly picture: StoryPicture
  readonly air: StoryAir | null
  readonly days: readonly {
    readonly day: string
    readonly steps: readonly { readonly text: string; readonly photos: readonly StoryPhoto[] }[]
  }[]
  readonly ending: readonly string[]
  readonly money: readonly { readonly name: string; readonly amount: string }[] | null
  readonly films: readonly {
    readonly name: string
    readonly chapters: readonly { readonly time: string; readonly text: string }[]
  }[]
}

/** A photograph by the id it is kept under, and which of its files is shown. */
export type StoryPhoto = { readonly photo: string; readonly size: 'large' | 'small'; readonly caption: string }

/** A circuit as plain shapes, px. */
export type StoryPicture = {
  readonly widthPx: number
  readonly heightPx: number
  readonly description: string
  readonly shapes: readonly StoryShape[]
  readonly blackAndWhite: boolean
  readonly parts: readonly string[]
  readonly covers: readonly { readonly letter: string; readonly name: string }[]
}
export type StoryShape =
  | { readonly kind: 'path'; readonly look: string; readonly d: string }
  | { readonly kind: 'circle'; readonly look: string; readonly x: number; readonly y: number; readonly r: number }
  | {
      readonly kind: 'text'
      readonly look: string
      readonly x: number
      readonly y: number
      readonly anchor: 'start' | 'middle'
      readonly text: string
    }
  | {
      readonly kind: 'at'
      readonly x: number
      readonly y: number
      readonly turned: boolean
      readonly shapes: readonly StoryShape[]
    }

/** Curves of the air: airflow in L/s, suction in kPa, air power in W. */
export type StoryAir = {
  readonly text: string
  readonly curves: readonly StoryCurve[]
  readonly times: readonly { readonly hole: string; readonly suction: string; readonly airPower: string }[]
}
export type StoryCurve = {
  readonly look: 'before' | 'now' | 'sound'
  readonly name: string
  readonly suction: StoryFigure
  readonly airPower: StoryFigure
  readonly peak: string
}
export type StoryXY = { readonly x: number; readonly y: number }
export type StoryFigure = {
  readonly middle: readonly StoryXY[]
  readonly low: readonly StoryXY[]
  readonly high: readonly StoryXY[]
  readonly points: readonly StoryXY[]
}
