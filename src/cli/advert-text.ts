import { moneyText } from '../base/money.ts'
import type { AdvertState } from '../bench/adverts/advert-state.ts'
import type { Calibration, Compared } from '../bench/adverts/compared.ts'

/** A kept advert as one line. */
export const advertLine = ({ id, name, advert, guess, decided }: AdvertState): string => {
  const money = (minor: number): string => moneyText(minor, advert.currency)
  const most = guess.ceilingMinor < 0 ? 'not even for nothing' : `at most ${money(guess.ceilingMinor)}`
  const end =
    decided === null
      ? 'open'
      : decided.kind === 'bought'
        ? `bought for ${money(decided.paidMinor)}: ${decided.machine}`
        : `passed by${decided.reason === '' ? '' : `: ${decided.reason}`}`
  return `${id}  ${name}  asks ${money(advert.askingMinor)}, ${most}  ${end}`
}

/** A guess against what came of it. */
export const comparedLine = (one: Compared): string => {
  const money = (minor: number): string => moneyText(minor, one.currency)
  const fault = one.foreseen === null ? '' : one.foreseen ? ', fault foreseen' : ', fault not foreseen'
  const price = one.belowCeiling ? 'price below the ceiling' : 'price above the ceiling'
  return `${one.name}: guessed ${money(one.guessedMinor)} in ${Math.round(one.guessedMin)} min, came to ${money(one.gotMinor)} in ${Math.round(one.gotMin)} min; ${price}${fault}`
}

/** All together: mean of the guesses against mean of what came, and losses foretold against losses. */
export const calibrationLine = ({ currency, count, ...all }: Calibration): string => {
  const money = (minor: number): string => moneyText(minor, currency)
  return `Of ${count} bought and gone: guessed ${money(all.guessedMinor)} on average, came to ${money(all.gotMinor)}; ${all.lossesForetold.toFixed(1)} losses foretold, ${all.losses} came; fault foreseen in ${all.foreseen} of ${all.faultKnown}.`
}
