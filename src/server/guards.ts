import type { MiddlewareHandler } from 'hono'
import { problem } from '../base/problem.ts'
import { refuse } from './refusals.ts'

/** Only files and answers of our own; no other page may frame this one or be sent to by its forms. */
const contentSecurityPolicy = [
  "default-src 'self'",
  "script-src 'self'",
  "style-src 'self'",
  "img-src 'self' blob:",
  "connect-src 'self'",
  "worker-src 'self'",
  "object-src 'none'",
  "frame-src 'none'",
  "base-uri 'none'",
  "form-action 'self'",
  "frame-ancestors 'none'",
].join('; ')

/** Headers that tell the browser to be strict, on every answer. */
export const strictHeaders: MiddlewareHandler = async (c, next) => {
  await next()
  // A file that brings its own says what it needs and no more.
  if (!c.res.headers.has('content-security-policy')) c.header('content-security-policy', contentSecurityPolicy)
  c.header('x-content-type-options', 'nosniff')
  c.header('referrer-policy', 'no-referrer')
  c.header('cross-origin-opener-policy', 'same-origin')
  c.header('cross-origin-resource-policy', 'same-origin')
  c.header('permissions-policy', 'camera=(), microphone=(), geolocation=()')
}

/**
 * Answers only when the browser asked for one of these host names. A program that listens on this machine alone would
 * otherwise answer a foreign page whose name was made to point here.
 */
export const onlyHosts = (hosts: Hosts): MiddlewareHandler => {
  const isKnown = typeof hosts === 'function' ? hosts : (host: string) => hosts.includes(host)
  return async (c, next) => {
    const host = new URL(c.req.url).hostname
    return isKnown(host) ? next() : refuse(c, 403, foreignHost)
  }
}

/** Host names that are answered to: a list, or a question asked of each, where addresses come and go. */
export type Hosts = readonly string[] | ((host: string) => boolean)

const harmless: readonly string[] = ['GET', 'HEAD', 'OPTIONS']

/**
 * Lets a browser change something only from the program's own pages: another site’s page says in `Sec-Fetch-Site` or `Origin` that it is
 * one. Programs that are no browsers send neither, and hold no cookie that another page could use.
 */
export const onlyOwnPages: MiddlewareHandler = async (c, next) => {
  if (harmless.includes(c.req.method)) return next()
  const site = c.req.header('sec-fetch-site')
  if (site !== undefined && site !== 'same-origin' && site !== 'none') return refuse(c, 403, foreignPage)
  const origin = c.req.header('origin')
  if (origin !== undefined && hostOf(origin) !== new URL(c.req.url).host) return refuse(c, 403, foreignPage)
  return next()
}

/** Host and port of an origin; null for `null` and what is none. */
const hostOf = (origin: string): string | null => (URL.canParse(origin) ? new URL(origin).host : null)

/** What is sent in is never unpacked: a few bytes could become gigabytes. */
export const nothingPacked: MiddlewareHandler = async (c, next) => {
  const packing = c.req.header('content-encoding')
  return packing === undefined || packing === 'identity' ? next() : refuse(c, 415, packed)
}

/** Text that may hold the key `__proto__`, plain or with one of its signs escaped. */
const mayNamePrototype = /__proto__|\\u00/i

/**
 * Refuses JSON with the key `__proto__`, which no form here has: copied carelessly it would change every object of the program. To be
 * used behind a limit of the body's size.
 */
export const noPrototypeKeys: MiddlewareHandler = async (c, next) => {
  if (!(c.req.header('content-type') ?? '').includes('json')) return next()
  const text = await c.req.text()
  return mayNamePrototype.test(text) && namesPrototype(text) ? refuse(c, 400, prototypeKey) : next()
}

const namesPrototype = (text: string): boolean => {
  let found = false
  try {
    JSON.parse(text, (key, value: unknown) => {
      found ||= key === '__proto__'
      return value
    })
  } catch (fault) {
    // What is not JSON is for the form to say; what is nested too deep to be walked is not let by.
    return !(fault instanceof SyntaxError)
  }
  return found
}

const foreignHost = problem(
  'foreign-host',
  '',
  'This address is not one the program answers to',
  'Open the address it printed when it started; behind a web server, start it with --behind-proxy and this name',
)
const foreignPage = problem(
  'foreign-page',
  '',
  'This was sent by a page of another site',
  'Open the program’s own page and do it there',
)
const packed = problem('packed', '', 'The body is packed (Content-Encoding)', 'Send it as it is')
const prototypeKey = problem('not-of-the-form', '', 'The body has a key “__proto__”, which no form has', 'Leave it out')
