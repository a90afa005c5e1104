import { describe, expect, it } from 'vitest'
import type { MachineDocument } from '../../../src/bench/contract.ts'
import type { NoteContentInput } from '../../../src/bench/note.ts'
import type { BenchStores, NoteStore } from '../../../src/bench/ports.ts'
import { blueprints } from '../../../src/blueprint/library.ts'
import { blueprintSchema } from '../../../src/blueprint/schema.ts'
import type { LogEntry } from '../../../src/server/app.ts'
import {
  blueprintListSchema,
  conflictSchema,
  machineDocumentSchema,
  machineListSchema,
  problemsSchema,
} from '../../../src/server/schemas.ts'
import { memoryBench } from '../../../src/store/memory/bench.ts'
import { appWith } from '../../support/memory-app.ts'
import { added } from '../../support/notes.ts'
import { tinyBlueprint } from '../../support/tiny-blueprint.ts'

type App = ReturnType<typeof appWith>

const post = (
  app: App,
  path: string,
  body: unknown,
  headers: Record<string, string> = { 'content-type': 'application/json' },
) => app.request(path, { method: 'POST', headers, body: typeof body === 'string' ? body : JSON.stringify(body) })

const [upright] = blueprints

const machines = '/api/bench/own/machines'
const addM1 = (app: App) => post(app, machines, { id: 'm1', content: added() })
const note = (app: App, version: number, content: NoteContentInput | object, id?: string) =>
  post(app, `${machines}/m1/notes`, { id, version, content })

/** The status and the problems of a refusal, held against the form that the API's document gives. */
const refusal = async (response: Response): Promise<[number, ...string[]]> => {
  const { problems } = problemsSchema.parse(await response.json())
  return [response.status, ...problems.map((one) => `${one.where}: ${one.what}. ${one.mend}.`)]
}

const documentOf = async (response: Response): Promise<MachineDocument> =>
  machineDocumentSchema.parse(await response.json())

describe('blueprints', () => {
  it('are listed and given in full, in the form of their schema', async () => {
    const app = appWith()
    const list = blueprintListSchema.parse(await (await app.request('/api/blueprints')).json())
    const { id, name, summary, recognise, signs, plate } = tinyBlueprint
    expect(list.blueprints).toEqual([{ id, name, summary, recognise, signs, plate, plugFuse: false, features: [] }])
    const whole: unknown = await (await app.request('/api/blueprints/tiny')).json()
    expect(blueprintSchema.parse(whole)).toEqual(tinyBlueprint)
  })

  it('on the list are small: twenty in under 60 kB', async () => {
    const twenty = Array.from({ length: 20 }, (_, k) => ({ ...upright, id: `${upright.id}.${k}` }))
    const text = await (await appWith({ blueprints: twenty }).request('/api/blueprints')).text()
    expect(blueprintListSchema.parse(JSON.parse(text)).blueprints).toHaveLength(20)
    expect(text.length).toBeLessThan(60_000)
  })

  it('that are not there are not found', async () => {
    expect(await refusal(await appWith().request('/api/blueprints/huge'))).toEqual([
      404,
      'id: There is no blueprint “huge”. There are: tiny.',
    ])
  })
})

describe('machines', () => {
  it('come in, are listed last first, and keep to their bench', async () => {
    const app = appWith()
    const first = await addM1(app)
    expect(first.status).toBe(201)
    expect((await documentOf(first)).state).toMatchObject({ id: 'm1', version: 1, paidMinor: 500 })
    await post(app, machines, { content: added({ name: 'Second' }) })
    const list = machineListSchema.parse(await (await app.request(machines)).json())
    expect(list.machines.map((one) => one.name)).toEqual(['Second', 'Heather grey upright'])
    expect(await (await app.request('/api/bench/demo/machines')).json()).toEqual({
      machines: [],
      inHand: 0,
      left: 0,
      after: null,
    })
    expect((await app.request('/api/bench/demo/machines/m1')).status).toBe(404)
  })

  it('sent again with the same content are there once; with another content they conflict', async () => {
    const app = appWith()
    await addM1(app)
    expect((await addM1(app)).status).toBe(201)
    const other = await post(app, machines, { id: 'm1', content: added({ paidMinor: 600 }) })
    expect(other.status).toBe(409)
    expect(conflictSchema.parse(await other.json()).document.state.paidMinor).toBe(500)
    expect(machineListSchema.parse(await (await app.request(machines)).json()).machines).toHaveLength(1)
  })

  it('take notes and say how they read', async () => {
    const app = appWith()
    await addM1(app)
    const response = await note(app, 1, { kind: 'reading', check: 'pins-on', result: { kind: 'open' }, minutes: 1 })
    expect(response.status).toBe(200)
    const document = await documentOf(response)
    expect(document.lines[1]?.text).toBe('Line pin to neutral pin, switch on: open')
    expect(await (await app.request(`${machines}/m1`)).json()).toEqual(document)
  })

  it('take a note sent again as kept, even when others came between', async () => {
    const app = appWith()
    await addM1(app)
    await note(app, 1, { kind: 'said', text: 'one' }, 'n1')
    await note(app, 2, { kind: 'said', text: 'two' }, 'n2')
    const again = await note(app, 1, { kind: 'said', text: 'one' }, 'n1')
    expect(again.status).toBe(200)
    expect((await documentOf(again)).notes.map((one) => one.id).slice(1)).toEqual(['n1', 'n2'])
    expect(await refusal(await note(app, 3, { kind: 'said', text: 'other' }, 'n1'))).toEqual([
      422,
      'id: There is another note with the id “n1”. Send it with a new id.',
    ])
  })

  it('answer an old version with the machine as it is now', async () => {
    const app = appWith()
    await addM1(app)
    await note(app, 1, { kind: 'said', text: 'one' })
    const late = await note(app, 1, { kind: 'said', text: 'two' })
    expect(late.status).toBe(409)
    const { problems, document } = conflictSchema.parse(await late.json())
    expect(problems[0]?.code).toBe('changed-meanwhile')
    expect(document.state.version).toBe(2)
    expect(document.lines.at(-1)?.text).toBe('one')
  })

  it('let exactly one of two notes to the same version in', async () => {
    const app = appWith()
    await addM1(app)
    const both = await Promise.all([
      note(app, 1, { kind: 'said', text: 'a' }),
      note(app, 1, { kind: 'said', text: 'b' }),
    ])
    expect(both.map((response) => response.status).sort()).toEqual([200, 409])
  })

  it('show what the engines make of them', async () => {
    const app = appWith()
    await addM1(app)
    await note(app, 1, { kind: 'opened', cover: 'back-cover', minutes: 3 })
    expect(await (await app.request(`${machines}/m1/view`)).json()).toEqual({ suspects: [], events: 1 })
  })

  it('take no note once they have left, until the leaving is struck out', async () => {
    const app = appWith()
    await addM1(app)
    await note(app, 1, { kind: 'left', exit: 'sell-for-spares', receivedMinor: 1500 }, 'sale')
    expect(await refusal(await note(app, 2, { kind: 'said', text: 'late' }))).toEqual([
      422,
      ': This machine was sold for spares or repair on 14 March 2026. If that was a slip, strike out the note of it first.',
    ])
    expect((await note(app, 2, { kind: 'struck', note: 'sale' })).status).toBe(200)
    expect((await documentOf(await note(app, 3, { kind: 'said', text: 'back' }))).state.left).toBeNull()
  })

  it('stay readable when their blueprint is not known any more, but take no notes', async () => {
    const own = memoryBench()
    await addM1(appWith({ benches: { own, demo: memoryBench() } }))
    const later = appWith({ benches: { own, demo: memoryBench() }, blueprints: [] })
    expect((await later.request(`${machines}/m1`)).status).toBe(200)
    expect((await later.request(`${machines}/m1/view`)).status).toBe(422)
    expect(await refusal(await note(later, 1, { kind: 'said', text: 'a' }, 'n1'))).toEqual([
      422,
      'blueprint: “tiny” is not a blueprint here. There is none to name.',
    ])
  })
})

describe('bad input', () => {
  const notes = `${machines}/m1/notes`
  it.each<[string, unknown, Record<string, string> | undefined, number, string]>([
    [notes, '{"version": 1,', undefined, 400, ': The body is not JSON. Send JSON as text in UTF-8.'],
    [notes, '', undefined, 400, ': The body is not JSON. Send JSON as text in UTF-8.'],
    [
      notes,
      'version=1',
      { 'content-type': 'application/x-www-form-urlencoded' },
      415,
      ': The body is not sent as JSON. Send it with content-type: application/json.',
    ],
    [
      notes,
      { version: 1 },
      undefined,
      400,
      'content: “content” is missing. Write it: an object in { } whose “kind” is one of added, seen, reading, gauge, rules, proof, opened, closed, confirmed, repaired, took-off, spent, said, struck, described-by, history, valued, photo, taken-out, put-in, cleaned, dried, graded, tried, worded, camera, listed, stamp, left, came-back.',
    ],
    [
      notes,
      { version: 1, content: { kind: 'measured' } },
      undefined,
      400,
      'content.kind: “measured” is none of added, seen, reading, gauge, rules, proof, opened, closed, confirmed, repaired, took-off, spent, said, struck, described-by, history, valued, photo, taken-out, put-in, cleaned, dried, graded, tried, worded, camera, listed, stamp, left, came-back. Use one of these.',
    ],
    [
      notes,
      {
        version: 1,
        content: { kind: 'reading', check: 'pins-on', result: { kind: 'ohms', resistanceOhm: -1 }, minutes: 1 },
      },
      undefined,
      400,
      'content.result.resistanceOhm: -1 is not right: a resistance is zero or more. Write a number of 0 or more, in ohms.',
    ],
    [
      notes,
      { version: 1, content: { kind: 'said', text: 'a', mood: 'good' } },
      undefined,
      400,
      'content: There is no field “mood” here. Take it out; the fields here are kind, text.',
    ],
    [
      notes,
      { version: 1, id: '../x', content: { kind: 'said', text: 'a' } },
      undefined,
      400,
      'id: “../x” is not right: an id is letters, digits and . _ -. Change it so that this holds.',
    ],
    [
      notes,
      { version: 1, content: { kind: 'said', text: 'x'.repeat(1024 * 1024) } },
      undefined,
      413,
      ': This is larger than one megabyte. Send less at a time.',
    ],
    [
      notes,
      { version: 1, content: { kind: 'confirmed', fault: 'flux' } },
      undefined,
      422,
      'fault: “flux” is not a fault here. Use one of flex-open, switch-open, motor-worn, motor-leaks.',
    ],
    [
      notes,
      { version: 1, content: { kind: 'reading', check: 'motor-winding', result: { kind: 'open' }, minutes: 1 } },
      undefined,
      422,
      'check: Probe point `motor.a` is behind the motor cover. Open first, in this order: back cover and motor cover, or measure at `switch.out`.',
    ],
    [
      `${machines}/m9/notes`,
      { version: 1, content: { kind: 'said', text: 'a' } },
      undefined,
      404,
      ': There is no machine “m9” on this bench. Look at the list of machines.',
    ],
    [
      machines,
      { content: { ...added(), blueprint: 'huge' } },
      undefined,
      422,
      'blueprint: “huge” is not a blueprint here. It must be tiny.',
    ],
    [
      machines,
      { content: { kind: 'said', text: 'a' } },
      undefined,
      422,
      'kind: The first note of a machine says that it came in. Send a note of the kind “added”.',
    ],
    [
      '/api/bench/theirs/machines',
      { content: added() },
      undefined,
      404,
      'bench: There is no such bench. Use own or demo.',
    ],
  ])('%# to %s', async (path, body, headers, status, text) => {
    const app = appWith()
    await addM1(app)
    const [found, first] = await refusal(await post(app, path, body, headers))
    expect([found, first]).toEqual([status, text])
    // Nothing was written.
    expect((await documentOf(await app.request(`${machines}/m1`))).state.version).toBe(1)
  })

  it.each([
    ['/api/nothing', 404],
    ['/api/bench/theirs/machines', 404],
    ['/api/bench/own/machines/m9', 404],
    ['/api/bench/own/machines/m9/view', 404],
    ['/api/schemas/constructor', 404],
  ])('GET %s', async (path, status) => {
    expect((await refusal(await appWith().request(path)))[0]).toBe(status)
  })
})

describe('a note that waited to be sent', () => {
  it('has the time it was made, and never one yet to come', async () => {
    const app = appWith()
    await addM1(app)
    const send = (id: string, version: number, madeAt: string) =>
      post(app, `${machines}/m1/notes`, { id, version, madeAt, content: { kind: 'said', text: id } })
    const first = await documentOf(await send('early', 1, '2020-01-01T08:00:00.000Z'))
    expect(first.notes.at(-1)?.at).toBe('2020-01-01T08:00:00.000Z')
    const second = await documentOf(await send('late', 2, '2999-01-01T08:00:00.000Z'))
    expect(second.notes.at(-1)!.at < '2999').toBe(true)
    expect(second.notes.map(({ seq }) => seq)).toEqual([1, 2, 3])
    // Sent again with another time of making: it is the same note.
    expect((await send('early', 1, '2021-01-01T08:00:00.000Z')).status).toBe(200)
    expect((await send('odd', 3, 'yesterday')).status).toBe(400)
  })
})

/** A bench in memory whose notes do otherwise. */
const withNotes = (notes: Partial<NoteStore>): BenchStores => {
  const bench = memoryBench()
  return { ...bench, notes: { ...bench.notes, ...notes } }
}

describe('when the inside fails', () => {
  const full: BenchStores = withNotes({
    add: () =>
      Promise.resolve({
        kind: 'not-kept',
        problem: { code: 'disk-full', where: '', what: 'The disk is full', mend: 'Make room' },
      }),
  })
  it('says so when the store cannot keep a note', async () => {
    const app = appWith({ benches: { own: full, demo: full } })
    expect(await refusal(await addM1(app))).toEqual([507, ': The disk is full. Make room.'])
  })

  it('tells the log what was thrown and the caller nothing of it', async () => {
    const entries: LogEntry[] = []
    const broken = withNotes({ notes: () => Promise.reject(new Error('secret of the inside')) })
    const app = appWith({ benches: { own: broken, demo: broken }, log: (entry) => entries.push(entry) })
    const response = await app.request(`${machines}/m1`)
    const text = await response.text()
    expect(response.status).toBe(500)
    expect(text).not.toMatch(/secret|at .*\.ts/)
    expect(problemsSchema.parse(JSON.parse(text)).problems[0]?.code).toBe('internal')
    expect(entries.map((entry) => entry.kind)).toEqual(['thrown', 'answered'])
  })
})

describe('what goes out', () => {
  it('is never kept by the browser where it may change', async () => {
    expect((await appWith().request(machines)).headers.get('cache-control')).toBe('no-store')
  })

  it('carries a strict policy, refusals too', async () => {
    for (const path of ['/healthz', '/api/nothing', machines]) {
      const { headers } = await appWith().request(path)
      const policy = headers.get('content-security-policy') ?? ''
      expect(policy).toContain("default-src 'self'")
      expect(policy).toContain("worker-src 'self'")
      expect(policy).not.toContain('unsafe')
      expect(headers.get('x-content-type-options')).toBe('nosniff')
    }
  })

  it('goes only to those who asked for this host, where hosts are named', async () => {
    const app = appWith({ hosts: ['127.0.0.1', 'localhost'] })
    expect((await app.request('http://127.0.0.1:4170/healthz')).status).toBe(200)
    expect((await app.request('http://rebound.example/healthz')).status).toBe(403)
  })
})
