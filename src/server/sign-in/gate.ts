import type { MiddlewareHandler } from 'hono'
import { problem } from '../../base/problem.ts'
import { recognise, signInBy } from '../../bench/people/sign-in.ts'
import { notFound, refuse } from '../refusals.ts'
import type { Access } from './access.ts'
import { allowedTo, mayDo } from './permissions.ts'
import { giveToken, takeToken, tokenOf } from './token-cookie.ts'
import { onBehalfOf } from './who-asks.ts'

/** Whether anybody has to sign in: where others reach the program, and wherever people have names. */
export const needsSignIn = async ({ isOpen, people }: Access): Promise<boolean> =>
  isOpen || signInBy(await people.people()) === 'name'

/**
 * Lets in who may ask: by the table of permissions, once there is any need to sign in. Where there is none, as on this machine alone with
 * nobody named, everything is let in.
 */
export const gate = (access: Access): MiddlewareHandler => {
  return async (c, next) => {
    if (!(await needsSignIn(access))) return onBehalfOf(null, next)
    const allowed = allowedTo(c.req.method, c.req.path)
    const token = tokenOf(c)
    const known = token === null ? null : await recognise(access, token)
    if (known === null) {
      if (allowed === 'anyone') return onBehalfOf(null, next)
      if (token !== null) takeToken(c, access)
      return refuse(c, 401, signInNeeded)
    }
    if (known.newToken !== null) giveToken(c, access, known.newToken)
    if (allowed === null) return refuse(c, 404, notFound)
    if (!mayDo(known.signedIn.role, allowed)) return refuse(c, 403, keeperOnly)
    return onBehalfOf(known.signedIn, next)
  }
}

const signInNeeded = problem('sign-in-needed', '', 'This device is not signed in', 'Sign in, then go on')
const keeperOnly = problem(
  'keeper-only',
  '',
  'Only a keeper of the books may see or change this',
  'Ask one of them, or have your role changed',
)
