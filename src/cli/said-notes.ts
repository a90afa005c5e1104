import { ok } from '../base/result.ts'
import type { complaintIds } from '../facts/complaints.ts'
import type { Noting } from './noting.ts'

/** `thrum confirm` and `thrum seen`: what was found at the bench. */
export const addFindings = (noting: Noting): void => {
  noting('confirm <machine> <fault>', 'a fault was confirmed by eye', (_document, [fault = '']) =>
    ok({ kind: 'confirmed', fault }),
  )
  noting('seen <machine> <complaints...>', 'what was seen on the bench', (_document, seen) =>
    ok({ kind: 'seen', complaints: [...seen] as (typeof complaintIds)[number][] }),
  )
}

/** `thrum say`, and `thrum strike` for a slip. */
export const addRemarks = (noting: Noting): void => {
  noting('say <machine> <words...>', 'a remark', (_document, words) => ok({ kind: 'said', text: words.join(' ') }))
  noting('strike <machine> <note> [reason]', 'strike a note out', (_document, [note = '', reason = '']) =>
    ok({ kind: 'struck', note, reason }),
  )
}
