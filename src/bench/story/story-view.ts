import { filmTime } from '../../base/film-time.ts'
import { inSentence } from '../../base/in-sentence.ts'
import type { Blueprint } from '../../blueprint/schema.ts'
import { complaints } from '../../facts/complaints.ts'
import type { Region } from '../../facts/regions.ts'
import { machinePicture, type MachinePicture } from '../../machine/drawing/picture.ts'
import { machineModel, proofView, resultText as soundText } from '../../machine/index.ts'
import type { Job } from '../../machine/job.ts'
import type { MachineDocument, MachineState } from '../contract.ts'
import { standing } from '../fold.ts'
import type { Note } from '../note.ts'
import { machinePhotos, photoPairs, type MachinePhoto } from '../photos/machine-photos.ts'
import { stripView } from '../stripping/strip-view.ts'
import { dayText, exitText, minutesText, resultText } from '../words.ts'
import { filmsOf } from './chapters.ts'
import { photoCaption, plainTexts, type PlainText } from './plain-text.ts'
import { storyAir, type StoryAir } from './story-air.ts'
import { storyMoney, type MoneyLine } from './story-money.ts'

/** A photograph of a story. `size`: which of the kept files is shown. */
export type StoryPhoto = { readonly photo: string; readonly size: 'large' | 'small'; readonly caption: string }

/** The whole job of a machine in words and figures, made from its notes alone; the same notes give the same story. */
export type StoryView = {
  readonly title: string
  /** Architecture and plate. */
  readonly about: string
  readonly dates: string
  /** Said of what is not real: the demonstration, a virtual machine. Empty for a real one. */
  readonly invented: string
  readonly claimed: string
  readonly found: readonly string[]
  readonly repairs: readonly string[]
  readonly pairs: readonly { readonly before: StoryPhoto; readonly after: StoryPhoto }[]
  readonly readings: readonly { readonly name: string; readonly read: string; readonly sound: string }[]
  readonly picture: MachinePicture
  readonly air: StoryAir | null
  /** What was done, day by day; a photograph stands with what it is about, else where it was taken. Each stands once. */
  readonly days: readonly { readonly day: string; readonly steps: readonly StoryStep[] }[]
  readonly ending: readonly string[]
  /** Null where it is not wanted. */
  readonly money: readonly MoneyLine[] | null
  readonly films: readonly {
    readonly name: string
    readonly chapters: readonly { readonly time: string; readonly text: string }[]
  }[]
}
export type StoryStep = { readonly text: string; readonly photos: readonly StoryPhoto[] }

export type StoryAsked = {
  readonly document: MachineDocument
  readonly blueprint: Blueprint
  readonly job: Job
  readonly region: Region
  readonly withMoney: boolean
  readonly isDemo: boolean
}

/** The drawing is made for this width and shrinks with the page. */
const pictureWidthPx = 640

export const storyView = ({ document, blueprint, job, region, withMoney, isDemo }: StoryAsked): StoryView => {
  const { state } = document
  const notes = standing(document.notes)
  const textOf = plainTexts(document.notes, blueprint)
  const captionOf = captions(document.notes, blueprint, textOf)
  const photos = machinePhotos(document.notes)
  const pairs = photoPairs(photos)
  const paired = new Set(pairs.flatMap(({ before, after }) => [before.note, after.note]))
  return {
    title: state.name,
    about: `${blueprint.name}, ${state.plate.voltageV} V, ${state.plate.powerW} W`,
    dates: datesText(state),
    invented: inventedText(state, isDemo),
    claimed: claimedText(state),
    found: textsOfKind(notes, 'confirmed', textOf),
    repairs: textsOfKind(notes, 'repaired', textOf),
    pairs: pairs.map(({ before, after }) => ({
      before: { photo: before.photo, size: 'large', caption: captionOf(before) },
      after: { photo: after.photo, size: 'large', caption: captionOf(after) },
    })),
    readings: readings(notes, blueprint, textOf),
    picture: machinePicture(blueprint, partsAtFault(state, blueprint), pictureWidthPx),
    air: storyAir(job),
    days: daysOf(
      notes,
      photos.filter(({ note }) => !paired.has(note)),
      textOf,
      captionOf,
    ),
    ending: [...endingOf(state, job, region), ...stripView(document.notes, blueprint).warnings],
    money: withMoney ? storyMoney(state) : null,
    films: filmsOf(document.notes, textOf).films.map(({ name, chapters }) => ({
      name,
      chapters: chapters.map(({ atMs, text }) => ({ time: filmTime(atMs), text })),
    })),
  }
}

const captions =
  (notes: readonly Note[], blueprint: Blueprint, textOf: PlainText) =>
  (photo: MachinePhoto): string =>
    photoCaption(photo, blueprint, (id) => {
      const note = notes.find((one) => one.id === id)
      return note === undefined ? '' : textOf(note)
    })

const textsOfKind = (notes: readonly Note[], kind: Note['content']['kind'], textOf: PlainText): readonly string[] =>
  notes.filter(({ content }) => content.kind === kind).map(textOf)

const datesText = ({ addedAt, left }: MachineState): string =>
  left === null
    ? `Came in on ${dayText(addedAt)}; still on the bench.`
    : `Came in on ${dayText(addedAt)}, ${exitText[left.exit]} on ${dayText(left.at)}.`

const inventedText = ({ practiceSeed }: MachineState, isDemo: boolean): string => {
  if (practiceSeed !== null) return 'A virtual machine with a hidden fault, to practise on; it does not exist.'
  return isDemo ? 'An invented machine of the demonstration; it does not exist.' : ''
}

const claimedText = ({ claimed }: MachineState): string =>
  [...claimed.complaints.map((one) => inSentence(complaints[one])), claimed.words]
    .filter((word) => word !== '')
    .join('; ')

/** Parts that were found at fault or repaired. */
const partsAtFault = ({ confirmed, fixed }: MachineState, blueprint: Blueprint): readonly string[] => [
  ...confirmed.flatMap(({ fault }) => blueprint.faults.filter(({ id }) => id === fault).map(({ part }) => part)),
  ...fixed.flatMap(({ repair }) => blueprint.repairs.filter(({ id }) => id === repair).map(({ part }) => part)),
]

const readings = (notes: readonly Note[], blueprint: Blueprint, textOf: PlainText): StoryView['readings'] => {
  const model = machineModel(blueprint, blueprint.plate)
  return notes.flatMap((note) => {
    const { content } = note
    if (content.kind === 'gauge' || content.kind === 'proof' || content.kind === 'tried')
      return [{ ...nameAndRest(textOf(note)), sound: '' }]
    if (content.kind !== 'reading') return []
    const check = blueprint.checks.find(({ id }) => id === content.check)
    return [
      {
        name: check?.name ?? content.check,
        read: resultText(content.result, check),
        // The first suspect of a model is "nothing wrong".
        sound: check?.kind === 'meter' ? soundText(model, check, 0) : '',
      },
    ]
  })
}

/** `Air, 13 mm hole: 6.2 kPa` in two. */
const nameAndRest = (text: string): { readonly name: string; readonly read: string } => {
  const at = text.indexOf(': ')
  return at < 0 ? { name: text, read: '' } : { name: text.slice(0, at), read: text.slice(at + 2) }
}

const daysOf = (
  notes: readonly Note[],
  photos: readonly MachinePhoto[],
  textOf: PlainText,
  captionOf: (photo: MachinePhoto) => string,
): StoryView['days'] => {
  const shown = (photo: MachinePhoto): StoryPhoto => ({ photo: photo.photo, size: 'small', caption: captionOf(photo) })
  const told = notes.filter((note) => !untold.includes(note.content.kind) && textOf(note) !== '')
  const ofNote = (id: string) => photos.filter(({ about }) => about.kind === 'note' && about.note === id)
  const withTheirNote = new Set(told.flatMap(({ id }) => ofNote(id).map(({ note }) => note)))
  const steps = [
    ...told.map((note) => ({ at: note.at, seq: note.seq, text: textOf(note), photos: ofNote(note.id).map(shown) })),
    ...notes.flatMap((note) => {
      const photo = photos.find((one) => one.note === note.id)
      if (photo === undefined || withTheirNote.has(note.id)) return []
      return [{ at: note.at, seq: note.seq, text: '', photos: [shown(photo)] }]
    }),
  ].toSorted((a, b) => Date.parse(a.at) - Date.parse(b.at) || a.seq - b.seq)
  const days = [...new Set(steps.map(({ at }) => dayText(at)))]
  return days.map((day) => ({
    day,
    steps: joined(steps.filter(({ at }) => dayText(at) === day).map(({ text, photos: of }) => ({ text, photos: of }))),
  }))
}

/** Photographs one after another, without a note between, stand in one row. */
const joined = (steps: readonly StoryStep[]): readonly StoryStep[] =>
  steps.reduce<readonly StoryStep[]>((before, step) => {
    const last = before.at(-1)
    if (last === undefined || step.text !== '') return [...before, step]
    return [...before.slice(0, -1), { ...last, photos: [...last.photos, ...step.photos] }]
  }, [])

/** What stands elsewhere in the story or is of no use to who reads it. */
const untold: readonly Note['content']['kind'][] = ['photo', 'camera', 'worded', 'valued', 'rules', 'struck']

const endingOf = (state: MachineState, job: Job, region: Region): readonly string[] => {
  const { left, minutes } = state
  const worked = minutes === 0 ? [] : [`${minutesText(Math.max(1, Math.round(minutes)))} of work in all.`]
  const checked = job.events.some(({ kind }) => kind === 'proof')
  const { title, sentence } = proofView(job, region).verdict
  const proof = checked ? [`Checks after repair: ${inSentence(title)}. ${sentence}`] : []
  if (left === null) return ['It is still on the bench.', ...worked, ...proof]
  const exit = exitText[left.exit]
  return [
    `It was ${exit} on ${dayText(left.at)}.`,
    ...(left.safety === '' ? [] : [`Safety, as noted: ${left.safety}`]),
    ...worked,
    ...proof,
  ]
}
