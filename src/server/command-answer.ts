import type { Context } from 'hono'
import type { LogOutcome } from '../bench/logs/log-commands.ts'
import { refuse } from './refusals.ts'

/** What became of a command as it goes out: the document, or why nothing was written. `status`: where it was done. */
export const commandAnswer = <Document extends object>(
  c: Context,
  status: 200 | 201,
  result: LogOutcome<Document>,
): Response => {
  switch (result.kind) {
    case 'done':
      return c.json(result.document, status)
    case 'refused':
      return refuse(c, 422, ...result.problems)
    case 'missing':
      return refuse(c, 404, ...result.problems)
    case 'conflict':
      return c.json({ problems: result.problems, document: result.document }, 409)
    case 'not-kept':
      return refuse(c, 507, ...result.problems)
  }
}
