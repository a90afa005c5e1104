import { htmlText } from './html-text.ts'
import type { StoryPicture, StoryShape } from './story.ts'

/** The drawing of a machine as SVG, with its key below. */
export const storyPicture = (picture: StoryPicture): string => {
  const { widthPx, heightPx, description, shapes, blackAndWhite, parts, covers } = picture
  const size = `width="${widthPx}" height="${heightPx}" viewBox="0 0 ${widthPx} ${heightPx}"`
  const key = [
    ...parts.map((name, at) => `<li><b>${at + 1}</b> ${htmlText(name)}</li>`),
    ...covers.map(({ letter, name }) => `<li><b>${htmlText(letter)}</b> ${htmlText(name)}</li>`),
  ].join('')
  return [
    `<p class="sideways quiet" aria-hidden="true">The drawing goes on to the right: move it sideways →</p><div class="drawing" tabindex="0" role="group" aria-label="Drawing; where it is wider than the window, it moves sideways"><svg class="${blackAndWhite ? 'circuit black-and-white' : 'circuit'}" ${size} role="img" aria-label="${htmlText(description)}">`,
    shapes.map(shape).join(''),
    `</svg></div><ul class="key">${key}</ul>`,
    `<p class="quiet">${blackAndWhite ? 'Dark: line. Grey: neutral.' : 'Brown: line. Blue: neutral.'} Dashed: covers.${shapes.some(isTint) ? ' Shaded: what was at fault or mended.' : ''}</p>`,
  ].join('')
}

const isTint = (one: StoryShape): boolean => one.kind === 'path' && one.look === 'tint'

const shape = (one: StoryShape): string => {
  switch (one.kind) {
    case 'path':
      return `<path class="${htmlText(one.look)}" d="${htmlText(one.d)}"/>`
    case 'circle':
      return `<circle class="${htmlText(one.look)}" cx="${one.x}" cy="${one.y}" r="${one.r}"/>`
    case 'text':
      return `<text class="${htmlText(one.look)}" x="${one.x}" y="${one.y}" text-anchor="${one.anchor}">${htmlText(one.text)}</text>`
    case 'at':
      return `<g transform="translate(${one.x} ${one.y})${one.turned ? ' rotate(90)' : ''}">${one.shapes.map(shape).join('')}</g>`
  }
}
