import type { SaleSheetView, SectionView } from './sheet-view.ts'

/** Stands behind words that no note bears out, and behind what is told in the seller's own words alone. */
const dagger = '†'
const doubleDagger = '‡'
const daggerWords = `${dagger} The seller’s own word: no note of the work bears it out.`
const doubleDaggerWords = `${doubleDagger} Said by the seller; no record of it.`

/** The sheet as it goes to a buyer, all in words. Photographs by their ids, in their order. */
export type SheetPaper = {
  readonly title: string
  readonly price: string
  readonly sections: readonly { readonly name: string; readonly lines: readonly string[] }[]
  readonly condition: readonly string[]
  readonly photos: readonly { readonly photo: string; readonly alt: string }[]
  /** What the daggers mean; empty where none stands. */
  readonly daggerWords: string
  readonly on: string
  readonly reference: string
}

/** The sheet for a buyer: empty sections left out, each claim that the notes do not bear out marked with a dagger, what no note speaks of with a double one. */
export const sheetPaper = (view: SaleSheetView): SheetPaper => {
  const marked = new Map(view.sections.map((one) => [one.section, withDaggers(one)]))
  return {
    title: marked.get('title') ?? '',
    price: view.price === null ? '' : [view.price.text, view.price.offered].filter((one) => one !== '').join(' '),
    sections: view.sections
      .filter(({ section, text }) => section !== 'title' && text !== '')
      .map(({ section, name }) => ({
        name,
        lines: (marked.get(section) ?? '').split('\n').filter((line) => line.trim() !== ''),
      })),
    condition: view.condition.map(
      ({ name, grade, looks, when, text }) =>
        `${name}: ${grade}, ${looks}${when === 'before' ? ' (before any cleaning)' : ''}${text === '' ? '' : `; ${text}`}`,
    ),
    photos: view.photos.map(({ photo, alt }) => ({ photo, alt })),
    daggerWords: [view.unsupported === 0 ? '' : daggerWords, view.ownWords === 0 ? '' : doubleDaggerWords]
      .filter((one) => one !== '')
      .join(' '),
    on: view.on,
    reference: view.reference,
  }
}

const withDaggers = ({ text, claims }: SectionView): string =>
  claims
    .filter(({ verdict }) => verdict !== 'supported')
    .toSorted((a, b) => b.to - a.to)
    .reduce(
      (words, { to, verdict }) =>
        `${words.slice(0, to)} ${verdict === 'own-words' ? doubleDagger : dagger}${words.slice(to)}`,
      text,
    )
