import type { OpenAPIHono } from '@hono/zod-openapi'
import { problem } from '../../base/problem.ts'
import { benchItself } from '../../bench/people/person.ts'
import { refuse } from '../refusals.ts'
import { typed } from '../typed.ts'
import type { Access } from './access.ts'
import { nameOf } from './sign-in.ts'
import * as routes from './sign-in-routes.ts'
import { whoAsks } from './who-asks.ts'

/** The addresses of people and of the devices that are signed in. */
export const addDevices = (app: OpenAPIHono, { people }: Access): void => {
  app.openapi(routes.peopleRoute, async (c) => {
    const named = (await people.people()).filter(({ id }) => id !== benchItself)
    return typed(c.json({ people: named.map(({ passphrase: _kept, ...shown }) => shown) }, 200))
  })
  const devices = async () => {
    const known = new Map((await people.people()).map((one) => [one.id, nameOf(one)]))
    const shown = await people.devices()
    return {
      devices: shown.map(({ id, name, person, signedInAt, seenAt, expiresAt }) => ({
        id,
        name,
        person: person === benchItself ? null : (known.get(person) ?? null),
        signedInAt,
        seenAt,
        expiresAt,
        isThis: id === whoAsks()?.device,
      })),
    }
  }
  app.openapi(routes.devicesRoute, async (c) => typed(c.json(await devices(), 200)))
  app.openapi(routes.shutOutRoute, async (c) => {
    const { id } = c.req.valid('param')
    if (!(await people.devices()).some((one) => one.id === id)) return typed(refuse(c, 404, noDevice(id)))
    const outcome = await people.removeDevice(id)
    if (outcome.kind === 'not-kept') return typed(refuse(c, 507, outcome.problem))
    return typed(c.json(await devices(), 200))
  })
}

const noDevice = (id: string) =>
  problem('unknown-device', 'id', `There is no device “${id}” signed in`, 'Look at the list of devices')
