import { inSentence } from '../../base/in-sentence.ts'
import type { Grade } from '../../facts/asking.ts'
import { gradeLooks } from '../../facts/sale-claims.ts'
import { saleShots, type SaleShot } from '../../facts/sale-shots.ts'
import type { Region } from '../../facts/regions.ts'
import type { AskingView } from '../../machine/asking.ts'
import type { Job } from '../../machine/job.ts'
import type { MachineDocument } from '../contract.ts'
import { foldNotes, standing } from '../fold.ts'
import { fittedTo } from '../fitted.ts'
import { jobOf } from '../job.ts'
import { machinePhotos, sellingPhotos } from '../photos/machine-photos.ts'
import { dayText } from '../words.ts'
import { claimsIn, isOfAPart, type ClaimMark } from './claims.ts'
import { evidenceOf, type Evidence } from './evidence.ts'
import { ownWordsIn } from './own-words.ts'
import { sectionWords } from './section-words.ts'
import { priceOfSheet, type SheetPrice } from './sheet-price.ts'
import { standingOf, type Standing } from './standing-of.ts'
import { sheetSections, type SheetSection } from './worded-note.ts'

/** One section: the words that stand, those of the notes beside them, and what is claimed. */
export type SectionView = {
  readonly section: SheetSection
  readonly name: string
  readonly text: string
  /** As the notes say it now. */
  readonly generated: string
  /** One's own words; null while the notes' words stand. `was`: as the notes said it then, where they say something else by now. */
  readonly own: { readonly note: string; readonly on: string; readonly was: string | null } | null
  readonly claims: readonly (Omit<ClaimMark, 'notes'> & { readonly notes: readonly NoteRef[] })[]
}

/** A note with how it reads. */
export type NoteRef = { readonly id: string; readonly text: string }

export type SheetPhoto = { readonly photo: string; readonly shot: SaleShot | null; readonly alt: string }

export type ConditionLine = {
  readonly part: string
  readonly name: string
  readonly grade: Grade
  readonly looks: string
  readonly when: 'before' | 'after'
  readonly text: string
}

/** GET …/sale-sheet: all that is on the sale sheet of a machine. */
export type SaleSheetView = {
  readonly machine: { readonly id: string; readonly name: string; readonly version: number }
  readonly standing: Standing
  readonly sections: readonly SectionView[]
  readonly condition: readonly ConditionLine[]
  readonly price: SheetPrice | null
  readonly photos: readonly SheetPhoto[]
  /** How many claims were found, and how many of them the notes do not bear out. */
  readonly found: number
  readonly unsupported: number
  /** How many clauses tell in one's own words of what no note speaks of. */
  readonly ownWords: number
  /** The day of the last note. */
  readonly on: string
  readonly reference: string
}

const names: Readonly<Record<SheetSection, string>> = {
  title: 'Title',
  opening: 'What it is',
  wrong: 'What was wrong',
  done: 'What was done',
  tested: 'What was tested',
  worn: 'What is worn',
  'with-it': 'What comes with it',
  closing: 'Last words',
}

export type SheetGrounds = {
  readonly job: Job
  readonly region: Region
  /** What to ask for it; null where that cannot be said. */
  readonly asking: AskingView | null
}

/** The sale sheet as the notes stand; the same notes give the same sheet. */
export const saleSheetView = (document: MachineDocument, { job, region, asking }: SheetGrounds): SaleSheetView => {
  const { state, notes } = document
  const own = standing(notes)
  const lastAt =
    own.findLast(({ content }) => content.kind !== 'worded' && content.kind !== 'camera')?.at ?? state.addedAt
  const evidence = evidenceOf(state, notes, job, region)
  const now = sectionWords(evidence, lastAt)
  const sections = sheetSections.map((section) =>
    sectionView(section, now[section], { document, job, region, evidence }),
  )
  return {
    machine: { id: state.id, name: state.name, version: state.version },
    standing: standingOf(evidence),
    sections,
    condition: evidence.graded.map(({ part, grade, when, text }) => ({
      part,
      name: job.blueprint.parts.find(({ id }) => id === part)?.name ?? part,
      grade,
      looks: gradeLooks[grade],
      when,
      text,
    })),
    price: priceOfSheet(state, job, standingOf(evidence), asking),
    photos: photosOf(document, job),
    ...countsOf(sections.flatMap(({ claims }) => claims)),
    on: dayText(lastAt),
    reference: referenceOf(state.id, state.version),
  }
}

const countsOf = (claims: readonly Pick<ClaimMark, 'verdict'>[]) => {
  const ownWords = claims.filter(({ verdict }) => verdict === 'own-words').length
  const supported = claims.filter(({ verdict }) => verdict === 'supported').length
  const found = claims.length - ownWords
  return { found, unsupported: found - supported, ownWords }
}

/** What tells sheets of like machines apart, and an old one of a machine from a new one; the bench's own ids stay on the bench. */
const referenceOf = (id: string, version: number): string =>
  `Sheet ${id
    .replace(/[^a-z0-9]/gi, '')
    .slice(-4)
    .toUpperCase()}-${version}`

type Whole = Pick<SheetGrounds, 'job' | 'region'> & { readonly document: MachineDocument; readonly evidence: Evidence }

const sectionView = (section: SheetSection, generated: string, whole: Whole): SectionView => {
  const { document, evidence } = whole
  const note = standing(document.notes).findLast(
    ({ content }) => content.kind === 'worded' && content.section === section,
  )
  const own = note?.content.kind === 'worded' && note.content.text !== '' ? { note, text: note.content.text } : null
  const text = own?.text ?? generated
  const was = own === null ? generated : wordsAt(section, own.note.seq, whole)
  const textOf = new Map(document.lines.map((line) => [line.id, line.text]))
  return {
    section,
    name: names[section],
    text,
    generated,
    own:
      own === null
        ? null
        : { note: own.note.id, on: dayText(own.note.at), was: isSame(section, was, generated) ? null : was },
    claims: marksOf(text, own !== null, evidence).map((mark) => ({
      ...mark,
      notes: mark.notes.flatMap((id) => {
        const words = textOf.get(id)
        return words === undefined ? [] : [{ id, text: words }]
      }),
    })),
  }
}

/** What the notes say of parts in their own words needs no other note; what one says oneself does. */
const marksOf = (text: string, isOwn: boolean, evidence: Evidence): readonly ClaimMark[] => {
  const claims = claimsIn(text, evidence)
  if (!isOwn)
    return claims.filter(
      ({ claim, verdict }) => !isOfAPart(claim) || (verdict !== 'unsupported' && verdict !== 'not-placed'),
    )
  const told = ownWordsIn(text, evidence, claims).map((one) => ({
    ...one,
    claim: 'own-words',
    name: 'in your own words',
    verdict: 'own-words' as const,
    why: 'No note speaks of it',
    notes: [],
  }))
  return [...claims, ...told].toSorted((a, b) => a.from - b.from)
}

/** The day in the last words moves with every note; that alone is no change. */
const isSame = (section: SheetSection, was: string, now: string): boolean =>
  section === 'closing' ? withoutDay(was) === withoutDay(now) : was === now
const withoutDay = (text: string): string => text.replace(/^This says what was noted up to .*$/m, '')

/** The section as the notes said it when this note was written. */
const wordsAt = (section: SheetSection, seq: number, { document, job, region }: Whole): string => {
  const before = document.notes.filter((note) => note.seq < seq)
  const state = fittedTo(foldNotes(before), job.blueprint)
  const then = jobOf(state, before, job.blueprint, job.attitude, job.costs)
  const last = standing(before).findLast(({ content }) => content.kind !== 'worded' && content.kind !== 'camera')
  return sectionWords(evidenceOf(state, before, then, region), last?.at ?? state.addedAt)[section]
}

/** So many photographs are on a sheet at most. */
const mostPhotos = 24

/** The shots that sell in their order, one of each and none of before; then what else was taken when it was done. */
const photosOf = ({ notes }: MachineDocument, { blueprint }: Job): readonly SheetPhoto[] => {
  const all = machinePhotos(notes)
  const shots = sellingPhotos(all)
  const others = all.filter(({ shot, when }) => shot === undefined && when === 'after')
  const unlike = new Map([...shots, ...others].map((photo) => [photo.photo, photo]))
  return [...unlike.values()].slice(0, mostPhotos).map(({ photo, shot, about, text }) => {
    const part = about.kind === 'part' ? (blueprint.parts.find(({ id }) => id === about.part)?.name ?? about.part) : ''
    const named = shot === undefined ? part : saleShots[shot]
    const words = [named, text].filter((one) => one !== '')
    return {
      photo,
      shot: shot ?? null,
      alt:
        words.length === 0
          ? 'The machine as it is sold'
          : words.map((one, i) => (i === 0 ? one : inSentence(one))).join(': '),
    }
  })
}
