import type { MiddlewareHandler } from 'hono'
import { clientKey, type Access } from './access.ts'
import { tryLater } from './sign-in.ts'
import { makeBucket } from './throttle.ts'

/** Far more than pages ask for, far less than what stops a small machine. */
const generous = { burst: 600, perSecond: 50 } as const

/** Keeps one address from taking the whole program to itself; on this machine alone nobody is held up. */
export const notTooOften = (access: Access): MiddlewareHandler => {
  const waitSeconds = makeBucket(generous, access.nowMs)
  return async (c, next) => {
    const wait = access.isOpen ? waitSeconds(clientKey(access.clientOf(c))) : 0
    return wait === 0 ? next() : tryLater(c, wait)
  }
}
