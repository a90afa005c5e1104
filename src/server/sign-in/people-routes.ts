import { createRoute, z } from '@hono/zod-openapi'
import { roles } from '../../facts/roles.ts'
import { json, jsonBody, refusal } from '../answers.ts'
import { peopleSchema } from './sign-in-routes.ts'

const passphrase = z.string().min(1).max(400)

const params = z.strictObject({ id: z.string().min(1).max(120) })
const refusals = {
  400: refusal('Not JSON, or not of the form'),
  413: refusal('Too large'),
  415: refusal('Not sent as JSON'),
  422: refusal('It cannot be so'),
  507: refusal('The store could not keep it'),
}
const answers = { 200: json('All people as they are now', peopleSchema), ...refusals }
const answersForOne = { ...answers, 404: refusal('There is nobody of this id') }

export const addPersonRoute = createRoute({
  method: 'post',
  path: '/api/people',
  summary: 'Adds a person; the first keeps the books, and from then on everybody signs in by name',
  request: jsonBody(z.strictObject({ name: z.string().max(200), role: z.enum(roles), passphrase })),
  responses: answers,
})

export const roleRoute = createRoute({
  method: 'post',
  path: '/api/people/{id}/role',
  summary: 'Changes what a person may do',
  request: { params, ...jsonBody(z.strictObject({ role: z.enum(roles) })) },
  responses: answersForOne,
})

export const removePersonRoute = createRoute({
  method: 'post',
  path: '/api/people/{id}/remove',
  summary: 'Takes a person off and shuts their devices out; what they wrote keeps their name',
  request: { params },
  responses: answersForOne,
})

export const personPassphraseRoute = createRoute({
  method: 'post',
  path: '/api/people/{id}/passphrase',
  summary: 'Sets the passphrase of a person and shuts their devices out',
  request: { params, ...jsonBody(z.strictObject({ passphrase })) },
  responses: answersForOne,
})

export const ownPassphraseRoute = createRoute({
  method: 'post',
  path: '/api/who/passphrase',
  summary: 'Sets the passphrase one signs in by; all devices signed in by the old one, this too, have to sign in anew',
  request: jsonBody(z.strictObject({ old: passphrase, passphrase })),
  responses: {
    200: json('It is set', z.strictObject({})),
    ...refusals,
    429: refusal('Too many wrong tries; Retry-After says when to try again'),
  },
})
