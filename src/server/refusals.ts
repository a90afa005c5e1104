import type { Context } from 'hono'
import { HTTPException } from 'hono/http-exception'
import { problem, type Problem } from '../base/problem.ts'

export type RefusalStatus = 400 | 401 | 403 | 404 | 409 | 413 | 415 | 422 | 429 | 500 | 503 | 507

/** A refusal as it goes out. */
export const refuse = (c: Context, status: RefusalStatus, ...problems: readonly Problem[]): Response =>
  c.json({ problems }, status)

export const notFound = problem(
  'not-found',
  '',
  'There is nothing at this address',
  'See /api/openapi.json for what there is',
)

export const tooLarge = problem('too-large', '', 'This is larger than one megabyte', 'Send less at a time')

const notJson = problem('not-json', '', 'The body is not JSON', 'Send JSON as text in UTF-8')
const notSentAsJson = problem(
  'not-sent-as-json',
  '',
  'The body is not sent as JSON',
  'Send it with content-type: application/json',
)
const broken = problem(
  'internal',
  '',
  'Something went wrong inside the program; nothing was written',
  'Try again; if it stays, start the program with --log and look at what it says',
)

/** Whether something thrown is the framework's way of saying that the request is wrong. */
export const isRefusal = (thrown: unknown): boolean => thrown instanceof HTTPException && thrown.status < 500

/** What goes out for something thrown: never its stack or its words, which may tell of the inside. */
export const refuseThrown = (c: Context, thrown: unknown): Response => {
  if (!(thrown instanceof HTTPException)) return refuse(c, 500, broken)
  if (thrown.status === 400) return refuse(c, 400, notJson)
  if (thrown.status === 413) return refuse(c, 413, tooLarge)
  if (thrown.status === 415) return refuse(c, 415, notSentAsJson)
  return refuse(c, 500, broken)
}
