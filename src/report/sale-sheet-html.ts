import type { SalePaper } from './sale-sheet.ts'

const style = `
html{font:1rem/1.5 sans-serif;color:#111;background:#fff}
body{max-width:44rem;margin:0 auto;padding:1rem}
h1{font-size:1.6rem;line-height:1.2;margin:.5rem 0}
h2{font-size:1.05rem;margin:1.25rem 0 .25rem;border-top:1px solid #767676;padding-top:.5rem}
p,ul{margin:.25rem 0}
ul{padding-left:1.2rem}
.price{font-size:1.6rem;font-weight:700}
.photos{display:grid;grid-template-columns:repeat(auto-fill,minmax(min(100%,16rem),1fr));gap:1rem;padding:0;list-style:none}
figure{margin:0}
img{display:block;width:100%;height:auto;border:1px solid #767676}
figcaption,.foot{font-size:.875rem}
@media print{@page{margin:15mm}body{max-width:none;padding:0}.photos{grid-template-columns:1fr 1fr}figure,h2{break-inside:avoid}h2{break-after:avoid}}
`.trim()

/** The sale sheet as one page of HTML that needs nothing else: photographs inside it, no script, laid out for paper too. */
export const saleSheetHtml = (paper: SalePaper): string =>
  [
    '<!doctype html>',
    '<html lang="en-GB">',
    '<head>',
    '<meta charset="utf-8">',
    '<meta name="viewport" content="width=device-width, initial-scale=1">',
    `<title>${escaped(paper.title)}</title>`,
    `<style>${style}</style>`,
    '</head>',
    '<body>',
    '<main>',
    `<h1>${escaped(paper.title)}</h1>`,
    ...(paper.price === '' ? [] : [`<p class="price">${escaped(paper.price)}</p>`]),
    ...paper.sections.map(({ name, lines }) => section(name, lines)),
    ...(paper.condition.length === 0 ? [] : [section('Looks, part by part', paper.condition)]),
    ...photos(paper),
    ...(paper.daggerWords === '' ? [] : [`<p class="foot">${escaped(paper.daggerWords)}</p>`]),
    `<p class="foot">${escaped(`${paper.reference}, ${paper.on}`)}</p>`,
    '</main>',
    '</body>',
    '</html>',
    '',
  ].join('\n')

const section = (name: string, lines: readonly string[]): string =>
  `<section><h2>${escaped(name)}</h2>${
    lines.length === 1
      ? `<p>${escaped(lines[0] ?? '')}</p>`
      : `<ul>${lines.map((line) => `<li>${escaped(line)}</li>`).join('')}</ul>`
  }</section>`

const photos = ({ photos: all }: SalePaper): readonly string[] =>
  all.length === 0
    ? []
    : [
        '<section><h2>Photographs</h2><ul class="photos">',
        ...all.map(
          ({ alt, jpeg }) =>
            `<li><figure><img src="data:image/jpeg;base64,${Buffer.from(jpeg).toString('base64')}" alt="${escaped(alt)}"><figcaption>${escaped(alt)}</figcaption></figure></li>`,
        ),
        '</ul></section>',
      ]

const escaped = (words: string): string =>
  words
    .replace(/&/g, '&amp;')
    .replace(/</g, '&lt;')
    .replace(/>/g, '&gt;')
    .replace(/"/g, '&quot;')
    .replace(/'/g, '&#39;')
