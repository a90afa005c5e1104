import pino from 'pino'
import { describe, expect, it } from 'vitest'
import { logEntry } from '../../../../src/server/log-entry.ts'
import { accessAt } from '../../../support/access.ts'
import { cookieOf, passphrases, peopledApp, send } from '../../../support/signed-app.ts'

describe('the log', () => {
  it('says what was asked and by which answer, and never a passphrase, a token or a hash of one', async () => {
    const lines: string[] = []
    const logger = pino({ level: 'debug' }, { write: (line: string) => void lines.push(line) })
    const { app, access } = await peopledApp({ log: logEntry(logger) })
    await send(app, '/api/sign-in', { name: 'Ada', passphrase: 'almost the right one' })
    const answer = await send(app, `/api/sign-in?passphrase=${encodeURIComponent(passphrases.Ada)}`, {
      name: 'Ada',
      passphrase: passphrases.Ada,
    })
    const cookie = cookieOf(answer)!
    await app.request('/api/devices', { headers: { cookie } })
    await send(app, '/api/sign-in', '{"passphrase": four plain words here}')
    await send(app, '/api/sign-out', {}, { cookie })
    const all = lines.join('')
    expect(lines.length).toBe(5)
    expect(lines.map((line) => (JSON.parse(line) as { path: string; status: number }).status)).toEqual([
      401, 200, 200, 400, 200,
    ])
    const [token = ''] = cookie.split('=').slice(1)
    for (const secret of [
      ...Object.values(passphrases),
      'almost the right',
      token,
      access.secrets.tokenHash(token),
      'scrypt',
      'horse',
    ])
      expect(all).not.toContain(secret)
  })

  it('tells what was thrown, without what was sent', async () => {
    const lines: string[] = []
    const logger = pino({ level: 'debug' }, { write: (line: string) => void lines.push(line) })
    const { access } = accessAt()
    const broken = {
      ...access,
      people: { ...access.people, addDevice: () => Promise.reject(new Error('disk on fire')) },
    }
    const { app } = await peopledApp({ access: broken, log: logEntry(logger) })
    expect((await send(app, '/api/sign-in', { name: 'Ada', passphrase: passphrases.Ada })).status).toBe(500)
    expect(lines.join('')).toContain('disk on fire')
    expect(lines.join('')).not.toContain('horse')
  })
})
