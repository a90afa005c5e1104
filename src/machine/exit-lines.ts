import type { Factor } from '../base/money-sum.ts'
import type { Source } from '../base/source.ts'
import { comebackMin, comebackShare, exitCosts, partSaleSource, sellThrough } from '../facts/trade.ts'
import type { ExitChances } from './exit-chances.ts'
import type { Job } from './job.ts'
import { line, type Ground, type LineDraft } from './money-lines.ts'
import { missingParts, partsWorthSelling } from './parts-for-sale.ts'
import { sparesPriceOf, workingPriceOf, type Price } from './prices.ts'
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

const priceGround = (job: Job, { setAt }: Price): Ground =>
  setAt === null ? job.blueprint.worth.source : { kind: 'set', at: setAt }

const missingMinor = (job: Job): number => missingParts(job).reduce((sum, { price }) => sum + price.minor, 0)

const missingNames = (job: Job): string =>
  missingParts(job)
    .map(({ name }) => name.toLowerCase())
    .join(', ')

const missingGrounds = (job: Job): readonly Ground[] => missingParts(job).map(({ price }) => priceGround(job, price))

const workingLines = (job: Job, { comesBack }: ExitChances): readonly LineDraft[] => {
  const { cleanMin, photographMin, listMin, handOverMin, materialsMinor, source } = exitCosts.sellWorking
  const [working, spares] = [workingPriceOf(job), sparesPriceOf(job)]
  const lessMissing = Math.min(working.minor, missingMinor(job))
  const price = working.minor - lessMissing
  const back = share(comesBack, 'come back')
  const backGrounds = [comebackShare.source, leftInGround]
  return [
    line('Sold working', 1, [money(working.minor)], [priceGround(job, working)]),
    ...(lessMissing === 0
      ? []
      : [line(`Not there: ${missingNames(job)}`, -1, [money(lessMissing)], missingGrounds(job))]),
    line('Money given back', -1, [money(price), back], backGrounds),
    line('Minutes of a return', -1, [time(job, comebackMin.value), back], [comebackMin.source, hourGround(job)]),
    line('What comes back, for spares', 1, [money(spares.minor), back], [priceGround(job, spares)]),
    line('Bag, filters, cleaning', -1, [money(materialsMinor)], [source]),
    timeLine(job, 'Cleaning it', cleanMin, source),
    timeLine(job, 'Photographs, advert, handing over', photographMin + listMin + handOverMin, source),
  ]
}

const leftInGround: Ground = { kind: 'blueprint', what: 'what a fault left in takes off' }

const sparesLines = (job: Job): readonly LineDraft[] => {
  const { listMin, handOverMin, source } = exitCosts.sellForSpares
  const [working, spares] = [workingPriceOf(job), sparesPriceOf(job)]
  const gone = Math.min(1, missingMinor(job) / Math.max(1, working.minor))
  return [
    line('Sold for spares or repair', 1, [money(spares.minor)], [priceGround(job, spares)]),
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
    timeLine(job, 'Advert and handing over', listMin + handOverMin, source),
  ]
}

const partsLines = (job: Job, { sound }: ExitChances): readonly LineDraft[] => {
  const { perPartStripMin, perListingMin, perSaleMin, feeShare, source } = exitCosts.breakForParts
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
    line('Fees of selling by post', -1, [money(total(({ brings }) => brings)), share(feeShare, 'fee')], [source]),
    line('Opening it', -1, [time(job, openMin)], [minutesGround, hourGround(job)]),
    timeLine(job, 'Taking parts out', taken * perPartStripMin, source),
    timeLine(job, 'Listing them', taken * perListingMin, source),
    timeLine(job, 'Packing and posting what sells', sold * perSaleMin, source),
  ]
}

/** Minutes of covers, checks and repairs. */
export const minutesGround: Ground = { kind: 'blueprint', what: 'minutes of covers, checks and repairs' }
