import type { OpenAPIHono } from '@hono/zod-openapi'
import type { Context } from 'hono'
import { problem } from '../../base/problem.ts'
import { benchItself, type Person } from '../../bench/people/person.ts'
import { recognise, signIn, signInBy, type SignedIn } from '../../bench/people/sign-in.ts'
import { guessing } from '../../facts/sign-in.ts'
import { refuse } from '../refusals.ts'
import { typed } from '../typed.ts'
import { clientKey, type Access } from './access.ts'
import { deviceName } from './device-name.ts'
import { needsSignIn } from './gate.ts'
import * as routes from './sign-in-routes.ts'
import { makeThrottle, type Throttle } from './throttle.ts'
import { giveToken, takeToken, tokenOf } from './token-cookie.ts'
import { whoAsks } from './who-asks.ts'

const together = 'all addresses'

/** The addresses of signing in and out, and of who is signed in. */
export const addSignIn = (app: OpenAPIHono, access: Access): void => {
  const slips = throttles(access)
  app.openapi(routes.howRoute, async (c) => {
    const by = signInBy(await access.people.people())
    return typed(c.json({ needed: await needsSignIn(access), by }, 200))
  })
  app.openapi(routes.signInRoute, async (c) => {
    const client = clientKey(access.clientOf(c))
    const wait = Math.max(slips.one.waitSeconds(client), slips.all.waitSeconds(together))
    if (wait > 0) return typed(tryLater(c, wait))
    // Counted before the hash is worked out, so that many at once are not all let in.
    slips.one.slipped(client)
    slips.all.slipped(together)
    const outcome = await signIn(access, {
      ...c.req.valid('json'),
      device: deviceName(c.req.header('user-agent') ?? ''),
    })
    if (outcome.kind === 'wrong') return typed(refuse(c, 401, wrong(signInBy(await access.people.people()) === 'name')))
    if (outcome.kind === 'not-kept') return typed(refuse(c, 507, outcome.problem))
    slips.one.succeeded(client)
    slips.all.succeeded(together)
    await forgetFormer(c, access)
    giveToken(c, access, outcome.token)
    return typed(c.json(await whoAnswer(access, outcome.signedIn), 200))
  })
  app.openapi(routes.signOutRoute, async (c) => {
    await forgetFormer(c, access)
    takeToken(c, access)
    c.header('clear-site-data', '"cache"')
    return typed(c.json({}, 200))
  })
  app.openapi(routes.whoRoute, async (c) => typed(c.json(await whoAnswer(access, whoAsks()), 200)))
}

const throttles = ({ nowMs }: Access): { readonly one: Throttle; readonly all: Throttle } => {
  const { firstWaitSeconds, forgottenAfterSeconds } = guessing
  const rules = { firstWaitSeconds, forgottenAfterSeconds }
  const one = { ...rules, free: guessing.freePerAddress, longestWaitSeconds: guessing.longestWaitSeconds }
  const all = { ...rules, free: guessing.freeTogether, longestWaitSeconds: guessing.longestTogetherSeconds }
  return { one: makeThrottle(one, nowMs), all: makeThrottle(all, nowMs) }
}

/** The sign-in that this browser had before, so that the list of devices does not grow by one browser signing in twice. */
const forgetFormer = async (c: Context, access: Access): Promise<void> => {
  const token = tokenOf(c)
  const known = token === null ? null : await recognise(access, token)
  if (known !== null) await access.people.removeDevice(known.signedIn.device)
}

const whoAnswer = async (access: Access, signedIn: SignedIn | null) => ({
  needed: await needsSignIn(access),
  person: signedIn?.person ?? null,
  role: signedIn?.role ?? ('keeper' as const),
  people: (await access.people.people()).filter(({ id }) => id !== benchItself).map(nameOf),
})

export const nameOf = ({ id, name }: Person): { readonly id: string; readonly name: string } => ({ id, name })

/** A refusal that says when to come again. */
export const tryLater = (c: Context, seconds: number): Response => {
  c.header('retry-after', String(seconds))
  const unit = seconds === 1 ? 'second' : 'seconds'
  return refuse(
    c,
    429,
    problem('too-many', '', 'That was too often in a short time', `Try again in ${seconds} ${unit}`),
  )
}

/** Which of the two was wrong is not said. */
const wrong = (isByName: boolean) =>
  problem(
    'wrong-passphrase',
    'passphrase',
    isByName ? 'Name or passphrase is not right' : 'The passphrase is not right',
    'Type it once more, slowly',
  )
