import { readdirSync, readFileSync } from 'node:fs'
import { describe, expect, it } from 'vitest'
import { checkBlueprint } from '../../../src/blueprint/check.ts'
import { blueprintById, blueprints } from '../../../src/blueprint/library.ts'
import type { Blueprint, GradedCheck, MeterCheck } from '../../../src/blueprint/schema.ts'
import { signQuestions } from '../../../src/blueprint/signs.ts'
import { componentShares } from '../../../src/facts/fault-rates.ts'
import { casesPerHundred, catalogueRows, type CatalogueRowId } from '../../../src/facts/fault-catalogue.ts'
import { readInState } from '../../../src/machine/meter-table.ts'

const meterChecks = ({ checks }: Blueprint) => checks.filter((check): check is MeterCheck => check.kind === 'meter')
const gradedChecks = ({ checks }: Blueprint) => checks.filter((check): check is GradedCheck => check.kind !== 'meter')
const soundReading = (blueprint: Blueprint, checkId: string): number => {
  const check = meterChecks(blueprint).find(({ id }) => id === checkId)
  if (check === undefined) throw new Error(`${blueprint.id} has no meter check ${checkId}`)
  return readInState(blueprint, blueprint.plate, check, [], () => 1)
}

describe('the library', () => {
  it('has each blueprint once and finds it by id', () => {
    expect(new Set(blueprints.map(({ id }) => id)).size).toBe(blueprints.length)
    for (const blueprint of blueprints) expect(blueprintById(blueprint.id)).toBe(blueprint)
  })

  it('knows ten architectures and 120 distinct faults, for 230 and 120 volts, class I and II', () => {
    expect(new Set(blueprints.map(({ name }) => name.replace('canister', 'cylinder'))).size).toBeGreaterThanOrEqual(10)
    expect(new Set(blueprints.flatMap(({ faults }) => faults.map(({ id }) => id))).size).toBeGreaterThanOrEqual(120)
    expect(new Set(blueprints.map(({ plate }) => plate.voltageV))).toEqual(new Set([230, 120]))
    expect(new Set(blueprints.map(({ plate }) => plate.protectionClass))).toEqual(new Set(['I', 'II']))
  })

  it('tells architectures apart by signs that are seen from outside', () => {
    const signsOf = new Map(blueprints.map(({ name, signs }) => [name.replace('canister', 'cylinder'), signs]))
    const kinds = [...signsOf]
    for (const [name, signs] of kinds)
      for (const [other, theirs] of kinds)
        if (name < other)
          expect(
            signQuestions.some(({ id }) => !(signs[id] ?? []).some((answer) => (theirs[id] ?? []).includes(answer))),
            `${name} and ${other} answer every question alike`,
          ).toBe(true)
  })

  it('names in its files nothing that no blueprint has', () => {
    // A piece may name what an architecture goes without; a name that no architecture has is a slip of the pen.
    const known = new Set(
      blueprints.flatMap((b) => [
        ...[b.points, b.parts, b.controls, b.circuit, b.covers, b.faults, b.checks, b.repairs].flatMap((items) =>
          items.map(({ id }) => id),
        ),
        ...gradedChecks(b).flatMap(({ outcomes }) => outcomes.map(({ id }) => id)),
      ]),
    )
    const folder = new URL('../../../src/blueprint/library/shared/', import.meta.url)
    const files = readdirSync(folder).map((file) => [file, readFileSync(new URL(file, folder), 'utf8')] as const)
    const used = files.flatMap(([file, text]) =>
      [...text.matchAll(/(?:excludes|removes|moving|unplug|coversOff): \[([^\]]*)\]|^\s+'([a-z0-9-]+)': \{/gm)].flatMap(
        ([, list, key]) =>
          (list ?? `'${key ?? ''}'`).match(/'[a-z0-9.-]+'/g)?.map((name) => `${file}: ${name.slice(1, -1)}`) ?? [],
      ),
    )
    expect(used.length).toBeGreaterThan(500)
    expect(used.filter((one) => !known.has(one.split(': ')[1] ?? ''))).toEqual([])
  })
})

type Has = (part: RegExp) => boolean
/** Words that only fit a machine with such a part, or of such a mains. */
const slips: readonly (readonly [RegExp, (has: Has, blueprint: Blueprint) => boolean])[] = [
  [/\bbag\b/i, (has) => !has(/^bag$/)],
  [/\bhandle (up|down|back)\b/i, (_, { signs }) => !(signs.stands ?? []).includes('upright')],
  [/\bhose\b/i, (has) => !has(/hose/)],
  [/\bcontrol board\b/i, (has) => !has(/board/)],
  [/\bcut-out\b/i, (has) => !has(/cut-out/)],
  [/\boverload\b/i, (has) => !has(/overload/)],
  [/\bbelt\b/i, (has) => !has(/belt/)],
  [/\bfilter\b/i, (has) => !has(/filter/)],
  [/\bplug fuse\b/i, (has) => !has(/fuse/)],
  [/\b(brown|blue) core\b|\bflex\b|\bearth\b|\bRCD\b/i, (_, { plate }) => plate.voltageV < 200],
]

const textKeys = ['name', 'how', 'does', 'danger', 'caution', 'hint', 'note', 'forbidden']
const textsOf = (value: unknown): readonly string[] => {
  if (Array.isArray(value)) return value.flatMap(textsOf)
  if (typeof value !== 'object' || value === null) return []
  return Object.entries(value).flatMap(([key, inner]) =>
    typeof inner === 'string' ? (textKeys.includes(key) ? [inner] : []) : textsOf(inner),
  )
}

describe.each(blueprints.map((blueprint) => [blueprint.id, blueprint] as const))('%s', (_id, blueprint) => {
  it('speaks of nothing that the machine does not have', () => {
    const has: Has = (part) => blueprint.parts.some(({ id }) => part.test(id))
    const { parts, faults, checks, repairs, covers } = blueprint
    const texts = textsOf([parts, faults, checks, repairs, covers])
    const unfit = slips.filter(([, absent]) => absent(has, blueprint))
    expect(texts.filter((text) => unfit.some(([word]) => word.test(text)))).toEqual([])
  })

  it('passes the whole checker', () => {
    expect(checkBlueprint(structuredClone(blueprint))).toMatchObject({ kind: 'ok' })
  })

  it('draws each point at a place of its own, on the grid of 28 by 16', () => {
    expect(new Set(blueprint.points.map(({ at }) => at.join())).size).toBe(blueprint.points.length)
    for (const { at } of blueprint.points) {
      expect(at[0]).toBeGreaterThanOrEqual(0)
      expect(at[0]).toBeLessThanOrEqual(28)
      expect(at[1]).toBeGreaterThanOrEqual(0)
      expect(at[1]).toBeLessThanOrEqual(16)
    }
  })

  it('shares no component of the open data out more than once over', () => {
    const over = componentShares.filter(
      ({ id }) =>
        blueprint.faults.reduce((sum, { rate }) => sum + (rate.component?.id === id ? rate.component.share : 0), 0) >
        1 + 1e-9,
    )
    expect(over.map(({ id }) => id)).toEqual([])
  })

  it('shares no row of the catalogue out more than once over', () => {
    const perRow = new Map<string, number>()
    for (const { rate } of blueprint.faults) {
      const rows = [...(rate.source.clause ?? '').matchAll(/row ([A-Z]\d\d)/g)].map(([, id]) => id ?? '')
      if (rows.length === 1) perRow.set(rows[0], (perRow.get(rows[0]) ?? 0) + rate.perHundred)
    }
    // Rates are rounded to a tenth: a row of four faults may be off by a few tenths.
    const most = (id: CatalogueRowId) =>
      Math.max(
        ...(['upright-one-motor', 'upright-two-motors', 'cylinder', 'tub'] as const).map((f) => casesPerHundred(id, f)),
      )
    expect([...perRow].filter(([id, sum]) => id in catalogueRows && sum > most(id as CatalogueRowId) + 0.3)).toEqual([])
  })

  it('has no belt, reel or board in its rates that it does not have in its parts', () => {
    const parts = new Set(blueprint.parts.map(({ id }) => id))
    for (const fault of blueprint.faults) expect(parts.has(fault.part), fault.id).toBe(true)
    if (!parts.has('belt')) expect(blueprint.faults.some(({ id }) => id.includes('belt'))).toBe(false)
  })

  it('asks for the plug out at every meter check, and states its guard at every run', () => {
    for (const { id, how } of meterChecks(blueprint)) expect(how, id).toMatch(/^Plug out/)
    for (const check of gradedChecks(blueprint).filter(({ kind }) => kind === 'look'))
      expect(check.how, check.id).toMatch(/^Plug out/)
    for (const check of gradedChecks(blueprint).filter(({ kind }) => kind !== 'look')) {
      expect(check.how, check.id).toMatch(/covers on/i)
      expect(check.how, check.id).toMatch(
        blueprint.plate.voltageV < 200 ? /GFCI socket/ : /RCD socket of 30 mA or less/,
      )
      expect(check.how, check.id).toMatch(/plug out/i)
      expect(check.controls['mains-switch'], check.id).toBe('on')
    }
  })

  it('has its dead checks before running, with the earth among them in class I', () => {
    const gates = blueprint.checks.filter((check) => check.beforeRunning).map(({ id }) => id)
    expect(gates).toEqual(
      expect.arrayContaining([
        'look-casing',
        'look-flex',
        'look-plug',
        'look-wet',
        'pins-on',
        'line-pin-to-metal',
        'neutral-pin-to-metal',
      ]),
    )
    expect(gates.includes('earth-pin-to-metal')).toBe(blueprint.plate.protectionClass === 'I')
  })

  // electrical.md of the figures, 5.2, after two textbook universal motors and one measured vacuum motor (derived): a winding
  // is 0.05 to 0.30 of V/I at a power factor of 0.97; brushes and commutator add a few tenths of an ohm.
  it('has a suction motor that reads in the band for its plate', () => {
    const motor = blueprint.circuit.find(({ id }) => id === 'suction-motor')
    if (motor?.kind !== 'motor' || !('shareOfPlate' in motor.power)) throw new Error('no suction motor')
    const { voltageV, powerW } = blueprint.plate
    const perAmp = (0.97 * voltageV ** 2) / (powerW * motor.power.shareOfPlate)
    const reading = soundReading(blueprint, 'motor-at-leads')
    expect(reading).toBeGreaterThan(0.05 * perAmp)
    expect(reading).toBeLessThan(0.3 * perAmp + 1)
  })

  // IEC 60228:2004 table 3, class 5, ohm per kilometre at 20 °C (figures in src/facts/conductors.ts come from the same table).
  it('has a flex that reads no more than its length of copper may', () => {
    const perKm: Record<string, number> = { 0.5: 39, 0.75: 26, 1: 19.5, 1.5: 13.3 }
    const flex = blueprint.circuit.find(({ id }) => id === 'flex-neutral')
    if (flex?.kind !== 'wire') throw new Error('no flex')
    const most = (flex.lengthM / 1000) * (perKm[flex.areaMm2] ?? 0)
    const reading = soundReading(blueprint, 'neutral-pin-to-entry')
    expect(reading).toBeGreaterThan(0.5 * most)
    expect(reading).toBeLessThanOrEqual(most + 0.01)
  })
})
