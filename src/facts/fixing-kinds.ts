/** A kind of fixing by the noun that heads its name. `stays`: let go, it stays on the machine, so it can be open and never left over. */
export type FixingKind = { readonly noun: string; readonly plural: string; readonly stays: boolean }

const away = (noun: string, plural = `${noun}s`): FixingKind => ({ noun, plural, stays: false })
const stays = (noun: string, plural = `${noun}s`): FixingKind => ({ noun, plural, stays: true })

/** What fixings are called, and which of them stay on the machine when they are let go. Common practice of the trade. */
export const fixingKinds: readonly FixingKind[] = Object.freeze([
  away('screw'),
  away('bolt'),
  away('nut'),
  away('washer'),
  away('spring'),
  away('circlip'),
  away('E-clip'),
  away('spring clip'),
  away('hose clip'),
  away('ring'),
  away('pin'),
  away('clamp'),
  away('stud'),
  away('rivet'),
  away('tie'),
  away('cap'),
  away('spacer'),
  away('grommet'),
  // A screw with a slot for a coin.
  away('slot'),
  stays('catch', 'catches'),
  stays('clip'),
  stays('latch', 'latches'),
  stays('lever'),
  stays('bayonet'),
  stays('quarter-turn'),
  stays('buckle'),
  stays('hook'),
  stays('lug'),
  stays('tab'),
])

/** Words that settle it whatever noun they stand before: a captive screw stays, a loose clip does not. Common practice of the trade. */
const settling: readonly (readonly [RegExp, boolean])[] = [
  [/\bloose\b/i, false],
  [/\bcaptive\b|\bbayonet\b|\bquarter[- ]turn\b/i, true],
]

/** Longer nouns first, so that a spring clip is no clip. */
const byLength = fixingKinds.toSorted((a, b) => b.noun.length - a.noun.length)

type Headed = { readonly kind: FixingKind; readonly to: number; readonly isMany: boolean }

/** The last noun in a name of fixings, and where it ends; null where none is known. Of two that end at one place the longer. */
export const headNoun = (name: string): Headed | null =>
  byLength
    .flatMap((kind) =>
      [...name.matchAll(nounPattern(kind))].map(({ index, 0: words }) => ({
        kind,
        to: index + words.length,
        isMany: words.length === kind.plural.length,
      })),
    )
    .reduce<Headed | null>((last, one) => (last === null || one.to > last.to ? one : last), null)

const nounPattern = ({ noun, plural }: FixingKind): RegExp =>
  new RegExp(`(?<![\\p{L}\\d])(?:${plural}|${noun})(?!\\p{L})`, 'giu')

/**
 * Whether fixings of this kind stay where they are as they are let go. A kind that names one or the other (“quarter-turn catch or
 * PH2”) counts as the one that stays; who finds the screw writes the screw. Of one and the other (“screw and catch”) both must stay.
 */
export const staysInPlace = (kind: string): boolean =>
  kind.split(/ or |\//).some((one) => one.split(/ and | with |,/).every(staysAlone))

const staysAlone = (name: string): boolean =>
  settling.find(([words]) => words.test(name))?.[1] ?? headNoun(name)?.kind.stays ?? false
