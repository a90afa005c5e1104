import { valueOf } from '../../../src/base/result.ts'
import * as money from '../../../src/engines/money/index.ts'
import { truthFolders } from '../../support/truth-folders.ts'

/** Noise with this many degrees of freedom is normal to every figure compared. */
const normal = 1e6
const widestSd = 60
const sds = 80

type Schools = {
  readonly effects: readonly number[]
  readonly standardErrors: readonly number[]
  readonly centreSd: number
  readonly halfCauchy: number
}

/** One kind whose models are the schools; the spread between them at even steps of its half-Cauchy distribution. */
const schoolMeans = ({ effects, standardErrors, centreSd, halfCauchy }: Schools) => {
  const noise = 10
  const spreads = Array.from({ length: sds }, (_, i) => halfCauchy * Math.tan((Math.PI / 2) * ((i + 0.5) / sds)))
  const posterior = money.treePosterior({
    centre: { mean: 0, sd: centreSd },
    degrees: normal,
    spreads: spreads.filter((sd) => sd < widestSd).map((modelSd) => ({ kindSd: 0, modelSd, noise, weight: 1 })),
    tree: [effects.map((value, i) => [{ value, weight: (noise / standardErrors[i]) ** 2 }])],
    step: 1,
  })
  const schools = posterior.models[0].map((shares) => money.gridMoments(posterior.grid, shares))
  return {
    centre: money.gridMoments(posterior.grid, posterior.centre).mean,
    means: schools.map(({ mean }) => mean),
    sds: schools.map(({ sd }) => sd),
  }
}

/** A class of one kind of one model, next to nothing known beforehand. */
const location = ({ values, degrees, scale }: { values: readonly number[]; degrees: number; scale: number }) => {
  const posterior = money.treePosterior({
    centre: { mean: 3, sd: 10 },
    degrees,
    spreads: [{ kindSd: 0, modelSd: 0, noise: scale, weight: 1 }],
    tree: [[values.map((value) => ({ value, weight: 1 }))]],
    step: 0.02,
  })
  return money.gridMoments(posterior.grid, posterior.models[0][0])
}

truthFolders(import.meta.dirname, { ...money, schoolMeans, location }, (request) => valueOf(money.runMoney(request)))
