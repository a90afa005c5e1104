import { hooksOnPost, plugOnFlex, reel } from './cord.ts'
import { clearBin, hiddenBag } from './dust.ts'
import type { Entry } from './entry.ts'
import { headWorks } from './floor-head.ts'
import { lampOn, resetAt } from './marks.ts'
import { box, circle, edge, fine, leant, pressed, ribbed, solid, type Stroke } from './stroke.ts'

/** Machines that stand on their floor head and are pushed by a handle, seen from the side, front to the left. */
export const uprightStrokes = (entry: Entry): readonly Stroke[] => [
  solid('M10 108L15 95Q16 93 19 92.5L58 88Q66 88 66 96V108z'),
  ...(entry.features.includes('wheels') ? [solid(circle(60, 107, 3.5))] : []),
  ...lampOn(entry, 34, 91),
  ...leant(58, 88, 17, [...handle(-90), ...uprightBody(entry), ...switchOn(entry, { grip: -90, body: -52 })]),
  ...headWorks(entry.brush, 11, 108, { x: 58, y: 86 }),
  ...resetAt(entry, 58, 102),
  ...(entry.switch === 'foot' ? [pressed('M66 98l13 3v5l-13 -1z')] : []),
]

const handle = (top: number): readonly Stroke[] => [solid(box(-5, top, 10, 13, 4)), fine(box(-2, top + 3, 4, 7, 2))]

const uprightBody = (entry: Entry): readonly Stroke[] => [
  ...(entry.dust === 'cloth-bag' ? clothBagOnPost() : hardBody(entry)),
  ...(entry.cord === 'hooks' ? hooksOnPost(1.5, -74, -60) : []),
  ...(entry.cord === 'reel' ? [...reel(9, -9, 7.5), ...plugOnFlex(30, -9)] : []),
  ...(entry.features.includes('hose') ? [ribbed('M15 -6C28 -14 26 -40 15 -46')] : []),
]

/** A motor hood at the bottom, the handle's post, and the bag that hangs behind it. */
const clothBagOnPost = (): readonly Stroke[] => [
  solid('M-14 3Q-15 -17 0 -17Q15 -17 14 3z'),
  edge('M-1.5 -17V-77M1.5 -17V-77'),
  solid('M3 -68C22 -62 36 -34 30 -8Q18 0 7 -6Q14 -34 3 -68z'),
  fine('M9 -58Q21 -34 16 -5M16 -56Q29 -34 24 -6'),
]

const hardBody = (entry: Entry): readonly Stroke[] => {
  const room = { x: -12, y: -50, width: 24, height: 34 }
  return [
    edge('M-1.5 -54V-77M1.5 -54V-77'),
    solid(box(-15, -54, 30, 56, 6)),
    ...(entry.dust === 'bag' ? hiddenBag(room) : []),
    ...(entry.dust === 'bin' ? clearBin(room) : []),
    fine('M-15 -13H15'),
  ]
}

/** A thin stick: a small body below the grip, the floor head at the end of a tube. */
export const stickStrokes = (entry: Entry): readonly Stroke[] => [
  solid('M36 108L39 99Q40 97 43 97H66Q72 97 73 101V108z'),
  ...headWorks(entry.brush, 36, 108, null),
  ...leant(64, 97, 10, [
    ...handle(-92),
    edge('M-1.5 0V-38M1.5 0V-38M-1.5 -72V-79M1.5 -72V-79'),
    solid(box(-9, -72, 18, 34, 5)),
    ...(entry.dust === 'bag' ? hiddenBag({ x: -6, y: -68, width: 12, height: 26 }) : []),
    ...(entry.dust === 'bin' ? clearBin({ x: -7, y: -68, width: 14, height: 26 }) : []),
    ...(entry.dust === 'cloth-bag' ? [solid('M9 -70C22 -62 24 -46 20 -34Q12 -32 9 -42z')] : []),
    ...(entry.cord === 'hooks' ? hooksOnPost(1.5, -28, -10) : []),
    ...(entry.cord === 'reel' ? [...reel(15, -46, 6), ...plugOnFlex(40, -46)] : []),
    ...switchOn(entry, { grip: -92, body: -72 }),
  ]),
  ...(entry.switch === 'foot' ? [pressed('M73 100l11 2v4l-11 -1z')] : []),
  ...lampOn(entry, 58, 97),
  ...resetAt(entry, 68, 92),
]

/** The switch, where it is on the leant part. */
const switchOn = (entry: Entry, y: { readonly grip: number; readonly body: number }): readonly Stroke[] => [
  ...(entry.switch === 'handle' ? [pressed(box(-9, y.grip + 3, 4, 8, 1.5))] : []),
  ...(entry.switch === 'top' ? [pressed(box(4, y.body - 4, 8, 4, 1))] : []),
]
