import { buyingView, quickEffort } from '../../machine/buying/index.ts'
import type { Guess } from '../adverts/advert-note.ts'
import { guessOf } from '../adverts/guess-of.ts'
import type { FindBlueprint } from '../blueprints.ts'
import { costsOf } from '../costs.ts'
import { defaultSettings } from '../settings.ts'
import { advertsOfYear, type WeighedAdvert } from './advert-stories.ts'
import { lotsOfYear } from './lots.ts'

/** Works out what is guessed of each advert of the year, by id: what `guesses.ts` holds. Takes seconds. */
export const guessesOfYear = async (find: FindBlueprint): Promise<Readonly<Record<string, Guess>>> => {
  const guesses: Record<string, Guess> = {}
  for (const weighed of await advertsOfYear(await lotsOfYear(find), find)) {
    guesses[weighed.id] = await guessOfAdvert(weighed, find)
  }
  return guesses
}

/** By the settings of a new bench, with a quick look ahead. */
export const guessOfAdvert = async ({ advert }: WeighedAdvert, find: FindBlueprint): Promise<Guess> => {
  const blueprint = await find(advert.blueprint)
  if (blueprint === undefined) throw new Error(`demonstration: no blueprint ${advert.blueprint}`)
  const { hourMinor, attitude } = defaultSettings
  return rounded(
    guessOf(
      buyingView(advert, { blueprint, hourMinor, attitude, costs: costsOf(defaultSettings), effort: quickEffort }),
    ),
  )
}

/** Chances to one in ten thousand. */
const rounded = (guess: Guess): Guess => ({
  ...guess,
  lossChance: toFour(guess.lossChance),
  likely: guess.likely.map(({ fault, probability }) => ({ fault, probability: toFour(probability) })),
})

const toFour = (chance: number): number => Math.round(chance * 1e4) / 1e4
