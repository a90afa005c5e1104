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
  "base-uri 'none'",
  "form-action 'self'",
  "frame-ancestors 'none'",
].join('; ')

/** Headers that tell the browser to be strict, on every answer. */
export const strictHeaders: MiddlewareHandler = async (c, next) => {
  await next()
  c.header('content-security-policy', contentSecurityPolicy)
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
export const onlyHosts = (hosts: readonly string[]): MiddlewareHandler => {
  const known = new Set(hosts)
  return async (c, next) => {
    if (known.has(new URL(c.req.url).hostname)) return next()
    return refuse(c, 403, foreignHost)
  }
}

const foreignHost = problem(
  'foreign-host',
  '',
  'This address is not one the program answers to',
  'Open the address it printed when it started',
)
