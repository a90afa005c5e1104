import type { SalePaper } from './sale-sheet.ts'

/** The sale sheet as plain text, to be copied into an advert: the title, the price, then each section under its name. */
export const saleSheetText = (paper: Omit<SalePaper, 'photos'>): string =>
  [
    [paper.title, ...(paper.price === '' ? [] : [paper.price])],
    ...paper.sections.map(({ name, lines }) => [name, ...lines]),
    ...(paper.condition.length === 0 ? [] : [['Looks, part by part', ...paper.condition]]),
    ...(paper.daggerWords === '' ? [] : [[paper.daggerWords]]),
  ]
    .map((block) => block.join('\n'))
    .join('\n\n')
    .concat('\n')
