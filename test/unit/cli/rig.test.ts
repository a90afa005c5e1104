import { readFile } from 'node:fs/promises'
import { join } from 'node:path'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { makeCommandLine, type CommandLine } from './command-line.ts'

let line: CommandLine
beforeAll(async () => {
  line = await makeCommandLine()
})
afterAll(() => line.remove())

type Rig = { holes: { diameterMm: number }[]; suctionClass: { id: string } }

describe('rig', () => {
  it('says how it was decided, the holes, the gauge and the cautions, and writes the template', async () => {
    const file = join(line.folder, 'plates.svg')
    const { code, out, err } = await line.run('rig', 'bagged-cylinder', '--template', file)
    expect([code, err]).toEqual([0, ''])
    const { holes } = (await line.json('rig', 'bagged-cylinder')).value as Rig
    for (const { diameterMm } of holes) expect(out).toContain(`\n  ${diameterMm} mm `)
    expect(out).toMatch(/to 13\.8 kPa: saturates/)
    expect(out).toContain('only after its checks before running have passed (')
    expect(out).toContain(`Drilling template written: ${file}`)
    const svg = await readFile(file, 'utf8')
    expect([...svg.matchAll(/class="hole"[^>]* r="([^"]*)"/g)].map(([, r]) => 2 * Number(r))).toEqual(
      holes.map((hole) => hole.diameterMm),
    )
  })

  it('takes a kind instead of a blueprint', async () => {
    const { code, value } = await line.json('rig', 'tub')
    expect([code, (value as Rig).suctionClass.id]).toEqual([0, 'tub'])
  })

  it('refuses a name that is none, and a file that cannot be written without losing the rig', async () => {
    const { code, value } = await line.json('rig', 'baged-cylinder')
    expect([code, value]).toMatchObject([1, { problems: [{ code: 'unknown-blueprint' }] }])
    const lost = await line.run('rig', 'stick', '--template', join(line.folder, 'no', 'such', 'file.svg'))
    expect(lost.code).toBe(1)
    expect(lost.err).toContain('cannot be written')
    expect(lost.out).toContain('Gauge: to ')
  })
})

describe('airflow', () => {
  it('answers a request and refuses what is not one', async () => {
    const input = JSON.parse(
      await readFile(join(import.meta.dirname, '../../truth/airflow/plate-19/input.json'), 'utf8'),
    ) as unknown
    const { code, value } = await line.json('airflow', await line.file('plate.json', input))
    expect(code).toBe(0)
    const { answer } = value as { answer: { airflowM3PerS: number } }
    // 21.5235 L/s: see origin.md beside that input.
    expect(Math.abs(answer.airflowM3PerS / 0.0215235 - 1)).toBeLessThan(1e-4)
    const refused = await line.json('airflow', await line.file('bad.json', { format: 'thrum-airflow-1' }))
    expect(refused.code).toBe(1)
  })
})
