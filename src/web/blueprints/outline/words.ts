import type { BlueprintEntry, Feature } from '../../../blueprint/entry.ts'
import { replyText } from '../../../blueprint/narrow.ts'
import { signQuestionIds, type SignQuestionId } from '../../../blueprint/signs.ts'

/** Short words for answers; others are said as their question puts them. */
const signWords: Readonly<Partial<Record<SignQuestionId, Readonly<Record<string, string>>>>> = {
  stands: {
    upright: 'upright',
    cylinder: 'low on wheels, with hose and wand',
    drum: 'drum with the motor on top, with hose and wand',
    stick: 'thin stick',
  },
  dust: { bag: 'bag inside', 'cloth-bag': 'cloth bag outside', bin: 'clear bin' },
  cord: { reel: 'flex winds itself in', hooks: 'flex round hooks' },
  brush: {
    belt: 'roll on a belt from the suction motor',
    electric: 'roll with a motor of its own',
    air: 'roll turned by air',
    none: 'plain head without a roll',
  },
  reset: { yes: 'overload button', no: 'no overload button' },
  switch: { handle: 'switch on the handle', foot: 'foot switch', top: 'switch on top' },
}

const featureWords: Partial<Record<Feature, string>> = { lamps: 'lamps' }

const inShort = (question: SignQuestionId, answer: string): string => {
  const text = replyText({ question, answer }).replace(/:.*$/, '')
  return text.charAt(0).toLowerCase() + text.slice(1)
}

/** What the drawing shows, for who cannot see it: `Upright; bag inside; flex round hooks`. */
export const outlineWords = ({ signs, features }: Pick<BlueprintEntry, 'signs' | 'features'>): string => {
  const seen = signQuestionIds.flatMap((id) => {
    const words = (signs[id] ?? []).map((answer) => signWords[id]?.[answer] ?? inShort(id, answer))
    return words.length === 0 ? [] : [words.join(' or ')]
  })
  const hose = features.includes('hose') && signs.stands?.[0] === 'upright' ? ['hose for hand tools'] : []
  const text = [...seen, ...hose, ...features.flatMap((feature) => featureWords[feature] ?? [])].join('; ')
  return text.charAt(0).toUpperCase() + text.slice(1)
}
