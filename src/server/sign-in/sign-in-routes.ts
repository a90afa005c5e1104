import { createRoute, z } from '@hono/zod-openapi'
import { roles } from '../../facts/roles.ts'
import { json, refusal } from '../answers.ts'

const named = z.strictObject({ id: z.string(), name: z.string() })
const signInFormSchema = z.strictObject({
  /** Where people sign in by name. */
  name: z.string().max(60).default(''),
  passphrase: z.string().min(1).max(400),
})

export const howSchema = z.strictObject({
  needed: z.boolean(),
  /** What is asked for: a name and its passphrase, the one passphrase of the bench, or nothing since none is set. */
  by: z.enum(['name', 'passphrase', 'nothing']),
})

export const whoSchema = z.strictObject({
  /** False where everything is let in without. */
  needed: z.boolean(),
  person: named.nullable(),
  role: z.enum(roles),
  /** All who ever had a name, to tell who wrote a note. */
  people: z.array(named),
})

export const howRoute = createRoute({
  method: 'get',
  path: '/api/sign-in',
  summary: 'Whether a sign-in is needed, and what it asks for',
  responses: { 200: json('How', howSchema) },
})

export const signInRoute = createRoute({
  method: 'post',
  path: '/api/sign-in',
  summary: 'Signs this device in: it gets a cookie that lasts for half a year from its last use',
  request: { body: { required: true as const, content: { 'application/json': { schema: signInFormSchema } } } },
  responses: {
    200: json('Signed in', whoSchema),
    400: refusal('Not JSON, or not of the form'),
    401: refusal('Name or passphrase is wrong'),
    413: refusal('Too large'),
    415: refusal('Not sent as JSON'),
    429: refusal('Too many wrong tries; Retry-After says when to try again'),
    507: refusal('The store could not keep it'),
  },
})

export const signOutRoute = createRoute({
  method: 'post',
  path: '/api/sign-out',
  summary: 'Signs this device out and has the browser forget what it kept',
  responses: { 200: json('Signed out, or was not signed in', z.strictObject({})) },
})

export const whoRoute = createRoute({
  method: 'get',
  path: '/api/who',
  summary: 'Who is signed in, and the names of those who write notes',
  responses: { 200: json('Who', whoSchema) },
})

export const peopleSchema = z.strictObject({
  people: z.array(
    z.strictObject({
      id: z.string(),
      name: z.string(),
      role: z.enum(roles),
      addedAt: z.string(),
      goneAt: z.string().nullable(),
    }),
  ),
})

export const peopleRoute = createRoute({
  method: 'get',
  path: '/api/people',
  summary: 'People and what they may do',
  responses: { 200: json('Those who are there and those who left', peopleSchema) },
})

const devicesSchema = z.strictObject({
  devices: z.array(
    z.strictObject({
      id: z.string(),
      name: z.string(),
      person: named.nullable(),
      signedInAt: z.string(),
      seenAt: z.string(),
      expiresAt: z.string(),
      isThis: z.boolean(),
    }),
  ),
})

export const devicesRoute = createRoute({
  method: 'get',
  path: '/api/devices',
  summary: 'Devices that are signed in, the one seen last first',
  responses: { 200: json('The devices', devicesSchema) },
})

export const shutOutRoute = createRoute({
  method: 'post',
  path: '/api/devices/{id}/shut-out',
  summary: 'Shuts a device out: it has to sign in anew',
  request: { params: z.strictObject({ id: z.string().min(1).max(120) }) },
  responses: {
    200: json('The devices that are left', devicesSchema),
    404: refusal('There is no such device'),
    507: refusal('The store could not keep it'),
  },
})
