import type { Factor } from '../base/money-sum.ts'
import type { Source } from '../base/source.ts'
import { conditionSource } from '../facts/buying.ts'
import { exitCosts, partSaleSource, sellThrough } from '../facts/trade.ts'
import { costGround, costsOfJob } from './costs.ts'
import type { ExitChances } from './exit-chances.ts'
import type { Job } from './job.ts'
import { line, type Ground, type LineDraft } from './money-lines.ts'
import { missingParts, partsWorthSelling } from './parts-for-sale.ts'
import { conditionShareOf, sparesPriceOf, workingPriceOf, type Price } from './prices.ts'
import type { ExitId } from './view.ts'

/**
 * What leaving by an exit puts in hand, line by line, own time and materials taken off. The lines add up to the exit's payoff:
 * for one suspect when the chances are of that suspect, for what is believed now when they are of the belief.
 */
export const exitLines = (job: Job, exit: ExitId, chances: ExitChances): readonly LineDraft[] => {
  switch (exit) {
    case 'sell-working':
      return workingLines(job, chances)
    case 'sell-for-spares':
      return sparesLines(job)
    case 'break-for-parts':
      return partsLines(job, chances)
    case 'scrap':
      return [timeLine(job, 'Taking it to the tip', exitCosts.scrap.minutes, exitCosts.scrap.source)]
  }
}

const money = (minor: number): Factor => ({ kind: 'money', minor })
const share = (value: number, name: string): Factor => ({ kind: 'share', share: value, name })
const time = (job: Job, minutes: number): Factor => ({ kind: 'time', minutes, hourMinor: job.hourMinor })

/** Where the worth of an hour comes from. */
export const hourGround = (job: Job): Ground => ({ kind: 'hour', at: job.hourSetAt ?? null })

const timeLine = (job: Job, name: string, minutes: number, source: Source): LineDraft =>
  line(name, -1, [time(job, minutes)], [source, hourGround(job)])

const priceGround = (job: Job, { setAt, market }: Price): Ground => {
  if (setAt !== null) return { kind: 'set', at: setAt }
  return market === undefined ? job.blueprint.worth.source : { kind: 'market', market }
}

/** A price of the whole machine: where its looks take a share off the blueprint's, that stands as a factor of its own. */
const wholePrice = (
  job: Job,
  price: Price,
): { readonly factors: readonly Factor[]; readonly grounds: readonly Ground[] } => {
  const looks = conditionShareOf(job)
  if (price.setAt !== null || looks === 1) return { factors: [money(price.minor)], grounds: [priceGround(job, price)] }
  return {
    factors: [money(price.minor / looks), share(looks, 'for its looks')],
    grounds: [priceGround(job, price), conditionSource],
  }
}

const missingMinor = (job: Job): number => missingParts(job).reduce((sum, { price }) => sum + price.minor, 0)

const missingNames = (job: Job): string =>
  missingParts(job)
    .map(({ name }) => name.toLowerCase())
    .join(', ')

const missingGrounds = (job: Job): readonly Ground[] => missingParts(job).map(({ price }) => priceGround(job, price))

const workingLines = (job: Job, { comesBack }: ExitChances): readonly LineDraft[] => {
  const { cleanMin, photographMin, listMin, handOverMin, source } = exitCosts.sellWorking
  const { comebackMin, materialsMinor } = costsOfJob(job)
  const [working, spares] = [workingPriceOf(job), sparesPriceOf(job)]
  const lessMissing = Math.min(working.minor, missingMinor(job))
  const price = working.minor - lessMissing
  const back = share(comesBack, 'come back')
  const backGrounds = [costGround(job, 'comebackShare'), leftInGround]
  return [
    line('Sold working', 1, wholePrice(job, working).factors, wholePrice(job, working).grounds),
    ...(lessMissing === 0
      ? []
      : [line(`Not there: ${missingNames(job)}`, -1, [money(lessMissing)], missingGrounds(job))]),
    line('Money given back', -1, [money(price), back], backGrounds),
    line('Minutes of a return', -1, [time(job, comebackMin), back], [costGround(job, 'comebackMin'), hourGround(job)]),
    line('What comes back, for spares', 1, [money(spares.minor), back], [priceGround(job, spares)]),
    ...saleFeeLines(job, price),
    line('Bag, filters, cleaning', -1, [money(materialsMinor)], [costGround(job, 'materialsMinor')]),
    timeLine(job, 'Cleaning it', cleanMin, source),
    timeLine(job, 'Photographs, advert, handing over', photographMin + listMin + handOverMin, source),
  ]
}

/** What selling a whole machine costs; nothing where it is sold locally for cash. */
const saleFeeLines = (job: Job, priceMinor: number): readonly LineDraft[] => {
  const { saleFeeShare } = costsOfJob(job)
  if (saleFeeShare === 0) return []
  const factors = [money(priceMinor), share(saleFeeShare, 'fee')]
  return [line('Fee of selling it', -1, factors, [costGround(job, 'saleFeeShare')])]
}

const leftInGround: Ground = { kind: 'blueprint', what: 'what a fault left in takes off' }

const sparesLines = (job: Job): readonly LineDraft[] => {
  const { listMin, handOverMin, source } = exitCosts.sellForSpares
  const [working, spares] = [workingPriceOf(job), sparesPriceOf(job)]
  const gone = Math.min(1, missingMinor(job) / Math.max(1, working.minor))
  return [
    line('Sold for spares or repair', 1, wholePrice(job, spares).factors, wholePrice(job, spares).grounds),
    ...(gone === 0
      ? []
      : [
          line(
            `Not there: ${missingNames(job)}`,
            -1,
            [money(spares.minor), share(gone, 'of its worth')],
            missingGrounds(job),
          ),
        ]),
    ...saleFeeLines(job, spares.minor * (1 - gone)),
    timeLine(job, 'Advert and handing over', listMin + handOverMin, source),
  ]
}

const partsLines = (job: Job, { sound }: ExitChances): readonly LineDraft[] => {
  const { perPartStripMin, perListingMin, perSaleMin, source } = exitCosts.breakForParts
  const parts = partsWorthSelling(job).map((part) => {
    const [isSound, sells] = [sound(part.id), sellThrough(part.price.minor)]
    return { ...part, isSound, sells, brings: part.price.minor * isSound * sells }
  })
  const total = (of: (part: (typeof parts)[number]) => number): number => parts.reduce((sum, p) => sum + of(p), 0)
  const taken = total(({ isSound }) => isSound)
  const sold = total(({ isSound, sells }) => isSound * sells)
  const openMin = job.blueprint.covers.reduce((sum, cover) => sum + cover.openMin, 0)
  return [
    ...parts.map(({ name, price, isSound, sells }) =>
      line(
        name,
        1,
        [money(price.minor), share(isSound, 'sound'), share(sells, 'sell')],
        [priceGround(job, price), partSaleSource],
      ),
    ),
    ...postLines(
      job,
      total(({ brings }) => brings),
      sold,
    ),
    line('Opening it', -1, [time(job, openMin)], [minutesGround, hourGround(job)]),
    timeLine(job, 'Taking parts out', taken * perPartStripMin, source),
    timeLine(job, 'Listing them', taken * perListingMin, source),
    timeLine(job, 'Packing and posting what sells', sold * perSaleMin, source),
  ]
}

/** What selling parts by post costs besides minutes: the fee, and postage where the seller pays it. */
const postLines = (job: Job, broughtMinor: number, sold: number): readonly LineDraft[] => {
  const { partFeeShare, postageMinor } = costsOfJob(job)
  const feeFactors = [money(broughtMinor), share(partFeeShare, 'fee')]
  const fee = line('Fees of selling by post', -1, feeFactors, [costGround(job, 'partFeeShare')])
  if (postageMinor === 0) return [fee]
  const postage = money(postageMinor * sold)
  return [fee, line('Postage of what sells, on average', -1, [postage], [costGround(job, 'postageMinor')])]
}

/** Minutes of covers, checks and repairs. */
export const minutesGround: Ground = { kind: 'blueprint', what: 'minutes of covers, checks and repairs' }
