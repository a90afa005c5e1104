import { ok } from '../base/result.ts'
import { adaptedWords } from '../bench/adapted-words.ts'
import { guessOf } from '../bench/adverts/guess-of.ts'
import { applyNotes } from '../bench/apply-notes.ts'
import { cleanView } from '../bench/cleaning/clean-view.ts'
import { costsOf } from '../bench/costs.ts'
import { jobOf } from '../bench/job.ts'
import { dayOf } from '../bench/logs/calendar-day.ts'
import { defaultSettings } from '../bench/settings.ts'
import { functionsView } from '../bench/functions/functions-view.ts'
import { photosView } from '../bench/photos/machine-photos.ts'
import { stripView } from '../bench/stripping/strip-view.ts'
import { chaptersText, filmsOf } from '../bench/story/chapters.ts'
import { plainTexts } from '../bench/story/plain-text.ts'
import { costLeft } from '../bench/fold.ts'
import { heldAgainst, withShelf } from '../bench/shelf/at-hand.ts'
import { takeOffShares } from '../bench/shelf/take-off-shares.ts'
import type { Blueprint } from '../blueprint/schema.ts'
import { meterSpec } from '../facts/meters.ts'
import { buyingView, checkAdvert, parseAdvert } from '../machine/buying/index.ts'
import {
  airRigOf,
  airView,
  cableCopper,
  faultRates,
  lookAlikes,
  faultShows,
  jobAfter,
  leadChoice,
  machineModel,
  machineView,
  onwardAfter,
  possibleResults,
  proofView,
  readMarks,
  resultText,
  reveal,
  runningBarred,
  usualAsking,
  virtualComplaints,
  virtualGauge,
  virtualResult,
} from '../machine/index.ts'
import type { EngineAnswer, EngineJob, EngineRequest, FromEngine, SoundReading, ToEngine } from './engine-protocol.ts'

/** Each message brings a copy of its blueprint; the first copy is kept, so that what is worked out from it is kept too. */
const kept = new Map<string, Blueprint>()

const keptCopy = (blueprint: Blueprint): Blueprint => {
  const text = JSON.stringify(blueprint)
  const known = kept.get(text) ?? blueprint
  kept.set(text, known)
  return known
}

const asJob = ({ state, notes, blueprint, settings, market, shelf }: EngineJob) => {
  const costs = settings === undefined ? undefined : costsOf(settings, state.currency)
  const job = { ...jobOf(state, notes, keptCopy(blueprint), settings?.attitude, costs), market }
  return shelf === undefined || settings === undefined
    ? job
    : withShelf(job, state, { parts: shelf, region: settings.region })
}

/** The meter that most benches have. */
const commonMeter = 'budget-multimeter'

/** The first suspect of a model is "nothing wrong". */
const sound = 0

const soundReadings = (blueprint: Blueprint): readonly SoundReading[] => {
  const model = machineModel(blueprint, blueprint.plate)
  return blueprint.checks
    .filter(({ kind }) => kind === 'meter')
    .map((check) => ({ check: check.id, name: check.name, text: resultText(model, check, sound) }))
}

const shows = (blueprint: Blueprint) => faultShows(machineModel(blueprint, blueprint.plate), meterSpec(commonMeter))

type Apply = Extract<EngineRequest, { readonly kind: 'apply' }>

const applying = async ({ document, blueprint, notes }: Apply): Promise<EngineAnswer> => ({
  kind: 'apply',
  applied: await applyNotes(document, keptCopy(blueprint), notes),
})

const heldFor = ({ job, region, parts }: Extract<EngineRequest, { kind: 'held' }>) => {
  const { state, blueprint, shelf = [] } = job
  return parts.flatMap((part) => {
    const held = heldAgainst({ blueprint }, state, { parts: shelf, region }, part)
    const name = blueprint.parts.find(({ id }) => id === part)?.name ?? part
    return held.length === 0 ? [] : [{ part, name, held }]
  })
}

const answer = (request: EngineRequest): EngineAnswer | Promise<EngineAnswer> => {
  switch (request.kind) {
    case 'view':
      return { kind: 'view', view: machineView(asJob(request.job), request.effort) }
    case 'results':
      return {
        kind: 'results',
        results: possibleResults(request.steps.reduce(jobAfter, asJob(request.job)), request.move),
      }
    case 'onward':
      return { kind: 'onward', onward: onwardAfter(asJob(request.job), request.steps) }
    case 'reading':
      return { kind: 'reading', result: virtualResult(asJob(request.job), request.seed, request.check) }
    case 'reveal':
      return { kind: 'reveal', reveal: reveal(asJob(request.job), request.seed, request.exit) }
    case 'complaints':
      return {
        kind: 'complaints',
        complaints: virtualComplaints(keptCopy(request.blueprint), request.plate, request.seed),
      }
    case 'rates':
      return { kind: 'rates', rates: faultRates(keptCopy(request.blueprint)) }
    case 'readings':
      return { kind: 'readings', readings: soundReadings(keptCopy(request.blueprint)) }
    case 'shows':
      return { kind: 'shows', shows: shows(keptCopy(request.blueprint)) }
    case 'marks':
      return { kind: 'marks', marks: readMarks(request.marks, request.inputW, request.today) }
    case 'look-alikes':
      return { kind: 'look-alikes', groups: lookAlikes(keptCopy(request.blueprint)) }
    case 'adapt':
      return { kind: 'adapt', adapted: adaptedWords(keptCopy(request.blueprint), request.edits) }
    case 'air': {
      const job = asJob(request.job)
      return { kind: 'air', air: airView(job, request.holesM), barred: runningBarred(job) }
    }
    case 'gauge':
      return { kind: 'gauge', reading: virtualGauge(asJob(request.job), request.seed, request.setUp) }
    case 'rig':
      return { kind: 'rig', rig: airRigOf(keptCopy(request.blueprint)) }
    case 'proof':
      return { kind: 'proof', proof: proofView(asJob(request.job), request.region) }
    case 'lead':
      return { kind: 'lead', lead: leadChoice(request.plate, request.region, request.lengthM, request.cables) }
    case 'photos':
      return { kind: 'photos', photos: photosView(request.notes) }
    case 'functions':
      return { kind: 'functions', functions: functionsView(asJob(request.job)) }
    case 'strip':
      return { kind: 'strip', strip: stripView(request.notes, keptCopy(request.blueprint)) }
    case 'films': {
      const films = filmsOf(request.notes, plainTexts(request.notes, keptCopy(request.blueprint)))
      return { kind: 'films', films, text: chaptersText(films) }
    }
    case 'clean':
      return { kind: 'clean', clean: cleaning(request) }
    case 'apply':
      return applying(request)
    case 'buying':
      return { kind: 'buying', buying: weighed(request) }
    case 'shares':
      return { kind: 'shares', shares: takeOffShares(request.asked, asJob(request.job), costLeft(request.job.state)) }
    case 'held':
      return { kind: 'held', held: heldFor(request) }
    case 'copper':
      return { kind: 'copper', copper: cableCopper(request.measured) }
  }
}

const cleaning = ({ job, asking, now }: Extract<EngineRequest, { kind: 'clean' }>) => {
  const { state, notes } = job
  const own = asJob(job)
  return cleanView({ state, notes, job: own, asking: asking ?? usualAsking(own, state.currency, dayOf(now)), now })
}

const weighed = ({ advert, blueprint, settings, market, effort }: Extract<EngineRequest, { kind: 'buying' }>) => {
  const parsed = parseAdvert(advert)
  const checked = parsed.kind === 'ok' ? checkAdvert(parsed.value, blueprint) : parsed
  if (checked.kind === 'refused') return checked
  const { currency } = checked.value
  const known = settings ?? defaultSettings
  const { hourMinor, attitude } = known
  const costs = costsOf(known, currency)
  const terms = { blueprint: keptCopy(blueprint), hourMinor, attitude, costs, market: market ?? undefined, effort }
  const view = buyingView(checked.value, terms)
  return ok({ advert: checked.value, view, guess: guessOf(view) })
}

const reply = async ({ id, request }: ToEngine): Promise<FromEngine> => {
  try {
    return { kind: 'answered', id, answer: await answer(request) }
  } catch (fault) {
    return { kind: 'failed', id, message: fault instanceof Error ? fault.message : String(fault) }
  }
}

self.addEventListener('message', (event: MessageEvent<ToEngine>) => {
  void reply(event.data).then((made) => self.postMessage(made))
})
