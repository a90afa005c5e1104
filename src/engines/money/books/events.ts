/** What every event carries: the day it happened, `2026-03-14`, and the note that tells of it. */
type Told = { readonly day: string; readonly note: string }

/** What a sale brought and cost. Minor units. */
type Sale = { readonly receivedMinor: number; readonly feeMinor: number; readonly postageMinor: number }

/** What happens to one machine, as far as money goes. Amounts in whole minor units, none below zero. */
export type MachineEvent = Told &
  (
    | { readonly kind: 'bought'; readonly minor: number }
    /** Parts and materials for it, paid for at once; they raise what it stands at. */
    | { readonly kind: 'spent'; readonly minor: number }
    /** A part from the shelf went in, with what it stood at there. */
    | { readonly kind: 'part-fitted'; readonly part: string; readonly minor: number }
    /** A part of it went to the shelf, with a share of what the machine stands at. */
    | { readonly kind: 'part-taken'; readonly part: string; readonly minor: number }
    | ({ readonly kind: 'sold' } & Sale)
    /** It left and brought nothing. */
    | { readonly kind: 'written-off' }
    /** The buyer brought it back: what is given back of the price. It stands at what it stood at before. */
    | { readonly kind: 'came-back'; readonly refundMinor: number }
  )

/** What happens to one lot of like parts on the shelf. `from-machine` and `to-machine` are posted in the machine's log alone. */
export type ShelfEvent = Told &
  (
    | { readonly kind: 'bought'; readonly minor: number }
    /** It lay there, or was given. */
    | { readonly kind: 'found' }
    | { readonly kind: 'from-machine' | 'to-machine'; readonly minor: number }
    /** `costMinor`: what the sold ones stood at; left out, all of it went. */
    | ({ readonly kind: 'sold'; readonly costMinor?: number } & Sale)
    | { readonly kind: 'written-off'; readonly costMinor?: number }
  )

/** Money spent on no machine in particular: tools, tape, a stall. */
export type ExpenseEvent = Told & { readonly minor: number; readonly what: string }

/** One log with its events in the order they happened; what was struck out is left out. */
export type Log =
  | { readonly kind: 'machine'; readonly events: readonly MachineEvent[] }
  | { readonly kind: 'part'; readonly part: string; readonly events: readonly ShelfEvent[] }
  | { readonly kind: 'expenses'; readonly events: readonly ExpenseEvent[] }
