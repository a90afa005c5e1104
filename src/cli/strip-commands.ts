import type { Command } from 'commander'
import type { Noting } from './noting.ts'
import { coverNote, partNote, withBackOptions, withStepOptions } from './strip-notes.ts'

/** Covers and parts as they come away and go back. */
export const addStripping = (noting: Noting): void => {
  const cover = (name: string, also: string, description: string, kind: 'opened' | 'closed'): Command =>
    (kind === 'closed' ? withBackOptions : withStepOptions)(
      noting(`${name} <machine> <cover>`, description, (read, [id = ''], options) =>
        coverNote(read, kind, id, options),
      ).alias(also),
    )
  const part = (name: string, description: string, kind: 'taken-out' | 'put-in'): Command =>
    (kind === 'put-in' ? withBackOptions : withStepOptions)(
      noting(`${name} <machine> <part>`, description, (read, [id = ''], options) => partNote(read, kind, id, options)),
    )
  cover('off', 'open', 'a cover was taken off', 'opened')
  cover('on', 'close', 'a cover was put back', 'closed')
  part('take-out', 'a part was taken out and laid by; it stays the machine’s', 'taken-out')
  part('put-in', 'a part was put back in', 'put-in')
}
