import { plugOnFlex, reel } from './cord.ts'
import { clearBin, hiddenBag } from './dust.ts'
import type { Entry } from './entry.ts'
import { headWorks } from './floor-head.ts'
import { lampOn, resetAt } from './marks.ts'
import { box, circle, edge, fine, inside, pressed, ribbed, solid, type Stroke } from './stroke.ts'

/** A body low on wheels, pulled along by its hose. */
export const cylinderStrokes = (entry: Entry): readonly Stroke[] => [
  solid(entry.dust === 'bin' ? 'M10 98V84Q10 70 26 70H40V98z' : 'M10 98V84Q10 66 30 66H58Q78 66 78 84V98z'),
  ...(entry.dust === 'bin' ? [...clearBin({ x: 40, y: 60, width: 30, height: 36 }), edge('M40 96H78V102H14')] : []),
  ...(entry.dust === 'bag' ? hiddenBag({ x: 42, y: 71, width: 30, height: 24 }) : []),
  ...(entry.dust === 'cloth-bag' ? [edge('M20 67C16 46 48 42 50 66')] : []),
  solid(circle(24, 99, 10)),
  fine(circle(24, 99, 3)),
  solid(circle(68, 105, 4)),
  ...(entry.cord === 'reel' ? [...reel(24, 79, 7), ...plugOnFlex(10, 84)] : []),
  ...(entry.cord === 'hooks' ? flexOnTop(14, 64) : []),
  ...(entry.switch === 'foot' ? [pressed('M13 72l4 -7l9 -4v5z')] : []),
  ...(entry.switch === 'top' ? [pressed(box(34, 62, 9, 4, 1))] : []),
  ...resetAt(entry, 34, 90),
  ...lampOn(entry, entry.dust === 'bin' ? 32 : 60, entry.dust === 'bin' ? 70 : 66),
  ...hoseAndWand(entry, `M${entry.dust === 'bin' ? 70 : 78} 82C98 74 86 22 112 18`),
]

/** A drum on castors with the motor in its lid. */
export const drumStrokes = (entry: Entry): readonly Stroke[] => [
  solid('M12 56L16 102H68L72 56z'),
  solid('M14 56V50Q14 34 42 34Q70 34 70 50V56z'),
  fine('M10 52h5v8h-5zM69 52h5v8h-5z'),
  edge(`${circle(22, 106, 3.5)}${circle(62, 106, 3.5)}`),
  ...(entry.dust === 'bag' ? hiddenBag({ x: 24, y: 62, width: 36, height: 36 }) : []),
  ...(entry.dust === 'bin' ? [fine('M16 90q6 -4 13 0t13 0t13 0t13 0'), inside('M26 56L36 76H48L58 56')] : []),
  ...(entry.dust === 'cloth-bag' ? [inside('M22 56Q24 92 42 92Q60 92 62 56')] : []),
  ...(entry.cord === 'reel' ? [...reel(42, 46, 7), ...plugOnFlex(14, 46)] : []),
  ...(entry.cord === 'hooks' ? flexOnTop(13, 33) : []),
  ...(entry.switch === 'top' ? [pressed(box(46, 30, 10, 5, 1.5))] : []),
  ...(entry.switch === 'foot' ? [pressed('M4 100l10 -3v6l-10 1z')] : []),
  ...resetAt(entry, 62, 46),
  ...lampOn(entry, 30, 35),
  ...hoseAndWand(entry, 'M71 70C98 70 88 20 112 18'),
]

/** Flex wound round two hooks that stand up from the top. */
const flexOnTop = (x: number, y: number): readonly Stroke[] => [
  edge(`M${x} ${y + 4}v-10h-4M${x + 20} ${y + 4}v-10h4`),
  fine(box(x - 3, y - 4, 26, 3.5, 1.7)),
  fine(box(x - 3, y - 1, 26, 3.5, 1.7)),
  fine(`M${x - 3} ${y + 1}c-5 2 -5 8 -2 12`),
]

/** From the end of the hose to the floor: grip, wand and head. An electric head is fed along the wand. */
const hoseAndWand = (entry: Entry, hose: string): readonly Stroke[] => [
  ribbed(hose),
  edge('M111 15L120 14L126 22M111 21L117 20.5L121 25'),
  edge('M126 22L142 94M121 25L136.5 95'),
  ...(entry.brush === 'electric' ? [inside('M130 24L146 94')] : []),
  ...(entry.switch === 'handle' ? [pressed(box(117, 9, 9, 4.5, 1.5))] : []),
  solid('M112 108L115 98Q116 95 119 95H144Q150 95 150 100V108z'),
  ...headWorks(entry.brush, 112, 108, null),
]
