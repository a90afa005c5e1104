import { filmTime } from '../../base/film-time.ts'
import { standing } from '../fold.ts'
import type { Note, NoteContent } from '../note.ts'

/** A mark in a film: how long the camera had run for it, ms, and what begins there. */
export type Chapter = { readonly atMs: number; readonly text: string }

/** A film by its name, empty where it has none, with its marks in order. `lengthMs`: how long the camera ran for it so far. */
export type Film = { readonly name: string; readonly chapters: readonly Chapter[]; readonly lengthMs: number }

/** All films of a machine in the order they began; `rolling` while the camera is on: which film, since when, and how long it had run before. */
export type Films = {
  readonly films: readonly Film[]
  readonly rolling: { readonly film: string; readonly since: string; readonly beforeMs: number } | null
}

/** Marks closer than this are one: viewers cannot tell them apart, and players leave lists with closer ones out. Common practice of film sites, from memory. */
export const leastApartMs = 10_000

/** What stands at the beginning of a film; what is noted in its first seconds is named after it. */
const beginning = 'Start'

/** Notes that tell nothing to whoever watches. */
const unseen: readonly NoteContent['kind'][] = [
  'photo',
  'camera',
  'worded',
  'valued',
  'listed',
  'struck',
  'history',
  'rules',
  'described-by',
  'spent',
]

type Running = {
  readonly films: ReadonlyMap<string, Film>
  readonly rolling: { readonly film: string; readonly sinceMs: number; readonly since: string } | null
}

/**
 * The marks of the films of a machine, from the times of its notes. Only the time while the camera ran counts; it runs for one film at a
 * time, and a film that is taken up again under its name goes on. Notes struck out leave no mark. The first mark is at 0, marks come in
 * order and at least ten seconds apart; what was noted closer is named together.
 * @param textOf a note as it reads in a list of chapters; empty for one that makes no mark
 */
export const filmsOf = (notes: readonly Note[], textOf: (note: Note) => string): Films => {
  const inTime = standing(notes).toSorted((a, b) => Date.parse(a.at) - Date.parse(b.at) || a.seq - b.seq)
  const { films, rolling } = inTime.reduce<Running>((before, note) => step(before, note, textOf), {
    films: new Map(),
    rolling: null,
  })
  return {
    films: [...films.values()],
    rolling:
      rolling === null
        ? null
        : { film: rolling.film, since: rolling.since, beforeMs: films.get(rolling.film)?.lengthMs ?? 0 },
  }
}

const step = (before: Running, note: Note, textOf: (note: Note) => string): Running => {
  const { content } = note
  if (content.kind === 'camera')
    return content.state === 'stopped' ? stopped(before, note) : started(before, note, content.film)
  if (before.rolling === null || unseen.includes(content.kind)) return before
  const film = before.films.get(before.rolling.film)
  const text = textOf(note)
  if (film === undefined || text === '') return before
  const atMs = film.lengthMs + Date.parse(note.at) - before.rolling.sinceMs
  return withFilm(before, { ...film, chapters: marked(film.chapters, { atMs, text }) })
}

const withFilm = (before: Running, film: Film): Running => ({
  ...before,
  films: new Map([...before.films, [film.name, film]]),
})

/** Another film ends the one before; the same one goes on. */
const started = (before: Running, note: Note, name: string): Running => {
  if (before.rolling?.film === name) return before
  const ended = stopped(before, note)
  const film = ended.films.get(name) ?? { name, chapters: [{ atMs: 0, text: beginning }], lengthMs: 0 }
  return { ...withFilm(ended, film), rolling: { film: name, sinceMs: Date.parse(note.at), since: note.at } }
}

const stopped = (before: Running, note: Note): Running => {
  const film = before.rolling === null ? undefined : before.films.get(before.rolling.film)
  if (before.rolling === null || film === undefined) return before
  const lengthMs = film.lengthMs + Date.parse(note.at) - before.rolling.sinceMs
  return { ...withFilm(before, { ...film, lengthMs }), rolling: null }
}

/** The marks with another one: its own, or named with the last where that is too close. */
const marked = (chapters: readonly Chapter[], next: Chapter): readonly Chapter[] => {
  const last = chapters.at(-1)
  if (last === undefined || next.atMs - last.atMs >= leastApartMs) return [...chapters, next]
  return [...chapters.slice(0, -1), { ...last, text: together(last.text, next.text) }]
}

/** What is named in one mark; a list of chapters has no room for more. */
const longestText = 120
const andMore = ' and more'

const together = (before: string, next: string): string => {
  if (before.endsWith(andMore)) return before
  return before.length + next.length > longestText ? `${before}${andMore}` : `${before}; ${next}`
}

/** The lists to copy as plain text: one line a mark; each film under its name where there are several. */
export const chaptersText = ({ films }: Films): string =>
  films
    .map(({ name, chapters }) =>
      [
        ...(films.length === 1 ? [] : [name === '' ? 'Film without a name' : name]),
        ...chapters.map(({ atMs, text }) => `${filmTime(atMs)} ${text}`),
      ].join('\n'),
    )
    .join('\n\n')
