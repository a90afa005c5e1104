import type { Context } from 'hono'
import { deleteCookie, getCookie, setCookie } from 'hono/cookie'
import { deviceTimes } from '../../facts/sign-in.ts'
import type { Access } from './access.ts'

const name = 'thrum-device'
/** 256 bits as base64url are 43 signs; anything else is not looked up. */
const form = /^[A-Za-z0-9_-]{43}$/

/** The token that the browser holds, if it holds one. */
export const tokenOf = (c: Context): string | null => {
  const token = getCookie(c, name)
  return token !== undefined && form.test(token) ? token : null
}

/** No script can read it, no other site can have it sent, and over https it goes over https alone. */
export const giveToken = (c: Context, access: Access, token: string): void =>
  setCookie(c, name, token, {
    httpOnly: true,
    sameSite: 'Strict',
    secure: access.isSecure(c),
    path: '/',
    maxAge: deviceTimes.lastsDays * 24 * 60 * 60,
  })

export const takeToken = (c: Context, access: Access): void => {
  deleteCookie(c, name, { path: '/', secure: access.isSecure(c), sameSite: 'Strict', httpOnly: true })
}
