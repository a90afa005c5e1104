import type { OpenAPIHono } from '@hono/zod-openapi'
import type { Context } from 'hono'
import { problem } from '../../base/problem.ts'
import {
  addPerson,
  changeRole,
  removePerson,
  setPassphrase,
  type PeopleOutcome,
} from '../../bench/people/people-commands.ts'
import { benchItself, standing } from '../../bench/people/person.ts'
import { guessing } from '../../facts/sign-in.ts'
import { refuse } from '../refusals.ts'
import { typed } from '../typed.ts'
import type { Access } from './access.ts'
import * as routes from './people-routes.ts'
import { tryLater } from './sign-in.ts'
import { makeThrottle } from './throttle.ts'
import { whoAsks } from './who-asks.ts'

/** The addresses at which people are added, changed and taken off, and at which everybody sets their own passphrase. */
export const addPeople = (app: OpenAPIHono, access: Access): void => {
  const { people } = access
  const answer = async (c: Context, outcome: PeopleOutcome): Promise<Response> => {
    if (outcome.kind !== 'done') return refuse(c, outcome.kind === 'refused' ? 422 : 507, ...outcome.problems)
    const named = (await people.people()).filter(({ id }) => id !== benchItself)
    return c.json({ people: named.map(({ passphrase: _kept, ...shown }) => shown) }, 200)
  }
  /** Does something about the person of an id. */
  const about = async (c: Context, id: string, work: (name: string) => Promise<PeopleOutcome>): Promise<Response> => {
    const person = standing(await people.people()).find((one) => one.id === id)
    return person === undefined ? refuse(c, 404, nobody(id)) : answer(c, await work(person.name))
  }
  app.openapi(routes.addPersonRoute, async (c) => typed(await answer(c, await addPerson(access, c.req.valid('json')))))
  app.openapi(routes.roleRoute, async (c) => {
    const { role } = c.req.valid('json')
    return typed(await about(c, c.req.valid('param').id, (name) => changeRole(access, name, role)))
  })
  app.openapi(routes.removePersonRoute, async (c) =>
    typed(await about(c, c.req.valid('param').id, (name) => removePerson(access, name))),
  )
  app.openapi(routes.personPassphraseRoute, async (c) => {
    const { passphrase } = c.req.valid('json')
    return typed(await about(c, c.req.valid('param').id, (name) => setPassphrase(access, name, passphrase)))
  })
  addOwnPassphrase(app, access)
}

const addOwnPassphrase = (app: OpenAPIHono, access: Access): void => {
  const { firstWaitSeconds, longestWaitSeconds, forgottenAfterSeconds, freePerAddress: free } = guessing
  const slips = makeThrottle({ firstWaitSeconds, longestWaitSeconds, forgottenAfterSeconds, free }, access.nowMs)
  app.openapi(routes.ownPassphraseRoute, async (c) => {
    const who = whoAsks()
    const whose = who?.person?.id ?? benchItself
    const wait = slips.waitSeconds(whose)
    if (wait > 0) return typed(tryLater(c, wait))
    const { old, passphrase } = c.req.valid('json')
    // Counted before the hash is worked out, so that many at once are not all let in.
    slips.slipped(whose)
    const kept = (await access.people.people()).find(({ id }) => id === whose)?.passphrase ?? null
    if (!(await access.secrets.matches(old, kept))) return typed(refuse(c, 422, wrongOld))
    slips.succeeded(whose)
    const outcome = await setPassphrase(access, who?.person?.name ?? null, passphrase)
    if (outcome.kind === 'done') return typed(c.json({}, 200))
    return typed(refuse(c, outcome.kind === 'refused' ? 422 : 507, ...outcome.problems))
  })
}

const nobody = (id: string) => problem('unknown-person', 'id', `There is nobody “${id}” here`, 'Look at the list of people') // prettier-ignore
const wrongOld = problem(
  'wrong-passphrase',
  'old',
  'The passphrase until now is not right',
  'Type it once more, slowly',
)
