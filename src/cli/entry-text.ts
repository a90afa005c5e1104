import type { EntryLine } from '../bench/logs/entry-lines.ts'
import { byText, type Names } from './who-wrote.ts'

/** An entry of a log as a line: `2. 2026-03-14 kept for m1 by Ada  (id)`. */
export const entryText = ({ seq, id, at, text, machine, by, isStruck }: EntryLine, names: Names): string =>
  `  ${seq}. ${at.slice(0, 10)} ${text}${machine === null ? '' : ` ${machine}`}${byText(by, names)}${isStruck ? '  [struck out]' : ''}  (${id})`
