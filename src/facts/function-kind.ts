import type { Source } from '../base/source.ts'
import type { PartKind } from './part-kinds.ts'

/** How a function is tried: by hand with the plug out, or on the running machine. */
export type FunctionWay = 'by-hand' | 'run'

/**
 * Something a machine must do before it is sold, in general: where it belongs, how it is tried and what good looks like.
 * Part ids are matched by their last words: `hose` is the end of `lower-hose`, not of `hose-grip`.
 */
export type FunctionKind = {
  readonly id: string
  readonly name: string
  readonly how: string
  readonly good: string
  readonly way: FunctionWay
  readonly minutes: number
  /** A machine with one of these parts has this function, unless the part is one of `except`. */
  readonly belongs: readonly string[]
  readonly except?: readonly string[]
  readonly partKinds?: readonly PartKind[]
  /** A machine with a control of this name has it too. */
  readonly controls?: readonly string[]
  /** A machine with an air path has it; all of the path is then its part. */
  readonly airPath?: true
  /** These parts give a machine this function without being what is tried. */
  readonly beside?: readonly string[]
  /** What else it shows something of. */
  readonly touches?: readonly string[]
  /** Blueprints' own checks that are the same, by id, the best first. */
  readonly checks: readonly string[]
  /** Only where a blueprint has such a check: nobody could say in general how to reach it or what it would show. */
  readonly onlyAsCheck?: true
  /** The blueprint's run that shows the whole machine to work. */
  readonly whole?: true
  /** The positions of the controls and the motor that must be driven are those of this check, where the blueprint has it. */
  readonly runsLike?: string
  /** Nothing running at all is a failure of this function itself: of the switch, of starting. */
  readonly deadIsBad?: true
  /** Something turns that can catch fingers, hair and cuffs. */
  readonly turns?: true
}

/** What is said before every function of a sort. Nobody probes a live machine: nothing here needs a meter. */
export const functionCautions = {
  'by-hand': 'Plug out of the socket and in sight.',
  run: 'Covers on, RCD socket of 30 mA or less, hands clear of all that turns. Plug out before touching anything.',
  turns: 'Fingers, hair, cuffs and flex well clear of the roll.',
} as const

/** Said with a function that tells nothing where nothing runs. */
export const nothingRuns = 'If nothing runs at all, say so under “Starts and runs”.'

/** How the functions of a machine are gone through before it is sold. */
export const functionKindsSource: Source = {
  title: 'Trying every function before a sale, as small benches do',
  clause: 'what is tried, how, and what good looks like',
  evidence: 'common practice',
}

type Share = { readonly value: number; readonly source: Source }

/** How often a sound function is taken for a bad one: something in the way, tried the wrong way, another model remembered. */
export const soundTakenForBad: Share = {
  value: 0.03,
  source: { title: 'How often a sound function is noted as bad at a small bench', evidence: 'judgement' },
}

/** How often a fault shows when just its function is tried, where the blueprint says nothing of how the fault shows. */
export const shownWhenTried: Share = {
  value: 0.7,
  source: { title: 'How often a fault shows when just its own function is tried', evidence: 'judgement' },
}

/** A control of a blueprint that belongs to no kind: each of its positions is tried. */
export const controlFunction = {
  how: 'Put it in each of its positions in turn, twice.',
  good: 'It holds in each, and the machine does what that says',
  minutes: 1,
} as const
