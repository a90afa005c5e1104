import { createHash } from 'node:crypto'
import { htmlText } from './html-text.ts'
import { storyCurves } from './story-curves.ts'
import { storyPicture } from './story-picture.ts'
import { storyStyle } from './story-style.ts'
import type { Story, StoryPhoto } from './story.ts'

/** The file of a photograph, JPEG; null where it is not kept any more. */
export type StoryFile = (photo: StoryPhoto) => Promise<Uint8Array | null>

/** What a browser may do with a story: show its own style and its own photographs. No script, nothing fetched, nothing sent. */
export const storyPolicy = `default-src 'none'; style-src 'sha256-${createHash('sha256').update(storyStyle).digest('base64')}'; img-src data:; base-uri 'none'; form-action 'none'`

/**
 * The story of a machine as one HTML file that needs nothing beside it: it opens without a network and prints. All words are
 * escaped; it holds no script. Photographs that are not kept any more are said to be missing.
 */
export const storyHtml = async (story: Story, fileOf: StoryFile): Promise<string> => {
  const shown = await shownPhotos(story, fileOf)
  return [
    '<!doctype html>',
    '<html lang="en"><head><meta charset="utf-8">',
    `<meta http-equiv="Content-Security-Policy" content="${htmlText(storyPolicy)}">`,
    '<meta name="viewport" content="width=device-width, initial-scale=1">',
    `<title>${htmlText(story.title)}</title><style>${storyStyle}</style></head>`,
    `<body><main>${sections(story, shown)}</main></body></html>`,
    '',
  ].join('\n')
}

type Shown = (photo: StoryPhoto) => string

const keyOf = ({ photo, size }: StoryPhoto): string => `${photo} ${size}`

/** Each file is read and written once as base64, all at the same time; a photograph that stands twice has the same text. */
const shownPhotos = async ({ pairs, days }: Story, fileOf: StoryFile): Promise<Shown> => {
  const photos = [
    ...pairs.flatMap(({ before, after }) => [before, after]),
    ...days.flatMap(({ steps }) => steps.flatMap((step) => step.photos)),
  ]
  const wanted = new Map(photos.map((photo) => [keyOf(photo), photo]))
  const texts = new Map(
    await Promise.all(
      [...wanted].map(async ([key, photo]) => {
        const bytes = await fileOf(photo)
        const text =
          bytes === null ? null : Buffer.from(bytes.buffer, bytes.byteOffset, bytes.length).toString('base64')
        return [key, text] as const
      }),
    ),
  )
  return (photo) => {
    const text = texts.get(keyOf(photo)) ?? null
    const words = htmlText(photo.caption)
    const image =
      text === null
        ? '<p class="gone">This photograph is not kept any more.</p>'
        : `<img src="data:image/jpeg;base64,${text}" alt="${words}" decoding="async">`
    return `<figure>${image}<figcaption>${words}</figcaption></figure>`
  }
}

const sections = (story: Story, shown: Shown): string =>
  [
    head(story),
    section(
      'Before and after',
      story.pairs.map(({ before, after }) => `<div class="pair">${shown(before)}${shown(after)}</div>`),
    ),
    section('What was wrong', story.found.map(paragraph)),
    section('What was mended', story.repairs.map(paragraph)),
    section('The machine', [storyPicture(story.picture)]),
    section('What was read', readings(story.readings)),
    section('How it breathes', story.air === null ? [] : [storyCurves(story.air)]),
    section('The work, day by day', days(story.days, shown)),
    section('How it ended', story.ending.map(paragraph)),
    section('Money', story.money === null ? [] : [moneyTable(story.money)]),
    section('Chapters of the film', films(story.films)),
  ].join('\n')

const head = ({ title, about, dates, invented, claimed }: Story): string =>
  [
    `<h1>${htmlText(title)}</h1><p class="quiet">${htmlText(about)}</p><p>${htmlText(dates)}</p>`,
    invented === '' ? '' : `<p class="invented">${htmlText(invented)}</p>`,
    claimed === '' ? '' : `<p class="said">Said of it: ${htmlText(claimed)}</p>`,
  ].join('')

/** Nothing where there is nothing to tell. */
const section = (title: string, content: readonly string[]): string =>
  content.length === 0 ? '' : `<section><h2>${htmlText(title)}</h2>${content.join('\n')}</section>`

const paragraph = (text: string): string => `<p>${htmlText(text)}</p>`

const readings = (all: Story['readings']): readonly string[] => {
  if (all.length === 0) return []
  // A column of nothing is left out.
  const withSound = all.some(({ sound }) => sound !== '')
  const rows = all.map(
    ({ name, read, sound }) =>
      `<tr><th scope="row">${htmlText(name)}</th><td>${htmlText(read)}</td>${withSound ? `<td>${htmlText(sound)}</td>` : ''}</tr>`,
  )
  const top = `<thead><tr><th scope="col">What</th><th scope="col">It read</th>${withSound ? '<th scope="col">A sound one reads</th>' : ''}</tr></thead>`
  return [`<table>${top}<tbody>${rows.join('')}</tbody></table>`]
}

const days = (all: Story['days'], shown: Shown): readonly string[] =>
  all.map(({ day, steps }) => {
    const items = steps.map(({ text, photos }) => {
      const row = photos.length === 0 ? '' : `<div class="row">${photos.map(shown).join('')}</div>`
      return text === '' ? `<li class="only">${row}</li>` : `<li>${htmlText(text)}${row}</li>`
    })
    return `<h3>${htmlText(day)}</h3><ul class="steps">${items.join('')}</ul>`
  })

const moneyTable = (lines: NonNullable<Story['money']>): string =>
  `<table><tbody>${lines.map(({ name, amount }) => `<tr><th scope="row">${htmlText(name)}</th><td class="amount">${htmlText(amount)}</td></tr>`).join('')}</tbody></table>`

const films = (all: Story['films']): readonly string[] =>
  all.map(({ name, chapters }) => {
    const lines = chapters.map(({ time, text }) => `<li><b>${htmlText(time)}</b> ${htmlText(text)}</li>`)
    return `${name === '' ? '' : `<h3>${htmlText(name)}</h3>`}<ul class="chapters">${lines.join('')}</ul>`
  })
