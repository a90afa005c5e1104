import { describe, expect, it } from 'vitest'
import { learnNaiveBayes, signsProblem, updateBelief, type Example } from '../../src/engines/belief/index.ts'
import { faultTypes, symptomColumns, symptomCounts } from '../../src/facts/fault-types.ts'
import {
  componentCases,
  componentRecords,
  componentShares,
  widerThanOneComponent,
} from '../../src/facts/fault-rates.ts'
import {
  hasFaultType,
  hasRepairRecords,
  namesCause,
  readComponentShares,
  readCordedRecords,
  type RepairRecord,
} from '../support/repair-records.ts'

// Open Repair Alliance, vacuum-cleaner records, snapshot of 2025-10-16, CC BY-SA 4.0, lying beside the repository.
if (!hasRepairRecords)
  console.log('No open repair records beside the repository: what is checked against them is left out.')
const records = hasRepairRecords ? readCordedRecords() : []

/** The labels of the records for the ids of the fact tables. */
const labels: Readonly<Record<string, string>> = {
  'Cable/cord': 'cord',
  Motor: 'motor',
  Blockage: 'blockage',
  'Internal damage': 'internal',
  'Button/switch': 'switch',
  Filter: 'filter',
  'Power/battery': 'power',
  'External damage': 'external',
  'Hose/tube/pipe': 'hose',
  Overheating: 'overheating',
  Brush: 'brush',
  'Wheels/rollers': 'wheels',
  'Dustbag/canister': 'bag',
  'Liquid damage': 'liquid',
  'Accessories/attachments': 'accessories',
  'Display/LED': 'display',
}

/** Tags of the records for the component ids; `dirt_general` and `blockage_unlocated` are both a blockage without a place. */
const tags: Readonly<Record<string, readonly string[]>> = {
  plug: ['plug_or_flex_at_plug'],
  'flex-reel': ['flex_break_in_reel'],
  'flex-entry': ['flex_at_appliance_entry'],
  'flex-middle': ['flex_mid_damage'],
  'reel-mechanism': ['reel_mechanism'],
  'reel-contacts': ['reel_contacts'],
  fuse: ['fuse'],
  'mains-switch': ['mains_switch'],
  'speed-control': ['speed_control_pcb'],
  'suppression-capacitor': ['suppression_capacitor'],
  'thermal-cut-out': [],
  'internal-wire': ['internal_wire_joint'],
  'carbon-brushes': ['carbon_brushes'],
  'motor-winding': ['motor_burnt_winding'],
  'motor-bearings': ['motor_bearings'],
  commutator: ['commutator'],
  'motor-dirt': ['motor_dirty'],
  'fan-wheel': ['fan_impeller'],
  belt: ['belt'],
  'brush-roll': ['brush_roll_or_head_drive'],
  hose: ['hose'],
  wand: ['wand_tube'],
  'floor-head': ['floor_head'],
  filters: ['filter_clogged'],
  'bag-or-bin': ['bag_or_bin'],
  'hose-blockage': ['blockage_hose'],
  'wand-blockage': ['blockage_wand_tube'],
  'head-blockage': ['blockage_floor_head'],
  'bag-full': [],
  'blockage-unplaced': ['dirt_general', 'blockage_unlocated'],
  seals: ['seal'],
  casing: ['casing_lid_catch'],
  wheels: ['wheels'],
  water: ['water'],
}

describe('fault-rate tables in themselves', () => {
  it('component shares make 1 and the records naming one add up', () => {
    expect(componentShares.reduce((sum, { share }) => sum + share, 0)).toBeCloseTo(1, 3)
    const { source: _, ...wider } = widerThanOneComponent
    const alone = componentShares.reduce((sum, row) => sum + row.alone, 0)
    expect(alone + Object.values(wider).reduce((a, b) => a + b, 0)).toBe(componentRecords.naming)
    expect(new Set(componentShares.map(({ id }) => id)).size).toBe(componentShares.length)
  })

  it('gives a component’s cases, and nothing for one that is not known', () => {
    const { share } = componentShares.find(({ id }) => id === 'mains-switch')!
    expect(componentCases('mains-switch')).toEqual({
      count: share * componentRecords.naming,
      total: componentRecords.naming,
    })
    expect(componentCases('flux capacitor')).toBeNull()
  })

  it('shares where a cause is named make 1', () => {
    expect(faultTypes.reduce((sum, type) => sum + type.causeNamedShare, 0)).toBeCloseTo(1, 2)
  })
})

describe.runIf(hasRepairRecords)('fault-rate tables against the records', () => {
  it('components: shares in the order of the published list, records naming each', () => {
    expect(componentShares.map(({ share }) => share)).toEqual(Object.values(readComponentShares()))
    expect(records).toHaveLength(componentRecords.corded)
    expect(records.filter(({ component }) => component !== null)).toHaveLength(componentRecords.naming)
    for (const { id, alone } of componentShares) {
      const named = records.filter(({ component }) => component !== null && tags[id].includes(component))
      expect(named, id).toHaveLength(alone)
    }
  })

  it('fault types: labelled records, and shares where a cause is named to the printed tenth of a per cent', () => {
    const labelled = records.filter(hasFaultType)
    const causes = records.filter(namesCause)
    for (const { id, records: count, causeNamedShare } of faultTypes) {
      expect(
        labelled.filter((record) => labels[record.faultType] === id),
        id,
      ).toHaveLength(count)
      const share = causes.filter((record) => labels[record.faultType] === id).length / causes.length
      expect(Math.abs(share - causeNamedShare), id).toBeLessThan(0.001)
    }
  })

  it('symptom counts are those of the records that name a cause', () => {
    const causes = records.filter(namesCause)
    for (const { id, counts } of symptomCounts) {
      const found = Object.fromEntries(symptomColumns.map((column) => [column, 0]))
      for (const record of causes.filter(({ symptoms }) => symptoms.includes(id.replaceAll('-', '_')))) {
        const label = labels[record.faultType]
        found[label in found ? label : 'other'] += 1
      }
      expect(found, id).toEqual(counts)
    }
  })
})

/*
 * Complaint in, fault type out. Only records that name a cause and have a symptom; each is judged by a model that was
 * learned from the other four folds. The fold of a record is a hash of its id, so nothing about the outcome chooses it.
 */
const foldCount = 5

/** FNV-1a, 32 bits. */
const hash = (text: string): number => {
  let value = 0x811c9dc5
  for (const character of text) value = Math.imul(value ^ character.codePointAt(0)!, 0x01000193) >>> 0
  return value
}

type Case = Example & { readonly fold: number }
type Predict = (signs: readonly number[]) => ArrayLike<number>
type Learn = (training: readonly Case[], kinds: number, signs: number) => Predict

const casesOf = (all: readonly RepairRecord[]): { cases: readonly Case[]; kinds: number; signs: number } => {
  const used = all.filter((record) => namesCause(record) && record.symptoms.length > 0)
  const kinds = [...new Set(used.map(({ faultType }) => faultType))].sort()
  const signs = [...new Set(used.flatMap(({ symptoms }) => symptoms))].sort()
  const cases = used.map(({ id, faultType, symptoms }) => ({
    kind: kinds.indexOf(faultType),
    signs: symptoms.map((symptom) => signs.indexOf(symptom)),
    fold: hash(id) % foldCount,
  }))
  return { cases, kinds: kinds.length, signs: signs.length }
}

const sharesOf = (counts: readonly number[], addition: number): number[] => {
  const total = counts.reduce((a, b) => a + b, 0) + addition * counts.length
  return counts.map((count) => (count + addition) / total)
}

const kindCounts = (training: readonly Case[], kinds: number): number[] => {
  const counts = new Array<number>(kinds).fill(0)
  for (const { kind } of training) counts[kind] += 1
  return counts
}

const uniform: Learn = (_, kinds) => () => new Array<number>(kinds).fill(1 / kinds)

const overallPrior: Learn = (training, kinds) => {
  const shares = sharesOf(kindCounts(training, kinds), 1)
  return () => shares
}

/** The table of counts: rows of the symptoms that are there added up, with so much added to each cell that none is 0. */
const countsTable =
  (addition: number): Learn =>
  (training, kinds) =>
  (signs) => {
    const rows = training.flatMap(({ kind, signs: shown }) =>
      shown.filter((sign) => signs.includes(sign)).map(() => kind),
    )
    return sharesOf(
      kindCounts(
        rows.map((kind) => ({ kind, signs: [], fold: 0 })),
        kinds,
      ),
      addition,
    )
  }

const ours: Learn = (training, kinds, signs) => {
  const model = learnNaiveBayes(training, kinds, signs)
  return (shown) => updateBelief(signsProblem(model, shown)).probability
}

describe.runIf(hasRepairRecords)('complaint to fault type on records not learned from', () => {
  const { cases, kinds, signs } = casesOf(records)

  /** −ln of the probability given to what it was, for each case. */
  const losses = (learn: Learn): readonly number[] => {
    const models = Array.from({ length: foldCount }, (_, fold) =>
      learn(
        cases.filter((c) => c.fold !== fold),
        kinds,
        signs,
      ),
    )
    return cases.map(({ kind, signs: shown, fold }) => -Math.log(models[fold](shown)[kind]))
  }
  const mean = (values: readonly number[]): number => values.reduce((a, b) => a + b, 0) / values.length
  /** Mean difference and its standard error, case by case. */
  const paired = (a: readonly number[], b: readonly number[]) => {
    const differences = a.map((value, i) => value - b[i])
    const by = mean(differences)
    const variance = mean(differences.map((d) => (d - by) ** 2))
    return { by, error: Math.sqrt(variance / differences.length) }
  }

  it('beats the overall prior by far and the table of counts, however it is smoothed', () => {
    const own = losses(ours)
    const others = {
      uniform: losses(uniform),
      'overall prior': losses(overallPrior),
      'counts table, +1': losses(countsTable(1)),
      'counts table, +0.5': losses(countsTable(0.5)),
      'counts table, +0.25': losses(countsTable(0.25)),
      'counts table, +0.1': losses(countsTable(0.1)),
    }
    const lines = Object.entries(others).map(([name, loss]) => {
      const { by, error } = paired(loss, own)
      return `  ${name}: ${mean(loss).toFixed(4)} (worse by ${by.toFixed(4)} ± ${error.toFixed(4)})`
    })
    console.log(
      [
        `Mean log-loss, ${cases.length} records, ${kinds} fault types:`,
        ...lines,
        `  ours: ${mean(own).toFixed(4)}`,
      ].join('\n'),
    )
    const prior = paired(others['overall prior'], own)
    expect(prior.by).toBeGreaterThan(5 * prior.error)
    for (const [name, loss] of Object.entries(others)) expect(mean(own), name).toBeLessThan(mean(loss))
  })

  it('is calibrated: what it gives 50 % and more happens about as often', () => {
    const models = Array.from({ length: foldCount }, (_, fold) =>
      ours(
        cases.filter((c) => c.fold !== fold),
        kinds,
        signs,
      ),
    )
    const sure = cases.flatMap(({ kind, signs: shown, fold }) => {
      const probability = models[fold](shown)
      const best = Array.from(probability).reduce((top, p, i) => (p > probability[top] ? i : top), 0)
      return probability[best] >= 0.5 ? [{ said: probability[best], was: Number(best === kind) }] : []
    })
    const said = mean(sure.map((s) => s.said))
    const was = mean(sure.map((s) => s.was))
    console.log(`Given 50 % and more in ${sure.length} records: said ${said.toFixed(3)}, was so ${was.toFixed(3)}`)
    expect(Math.abs(said - was)).toBeLessThan(3 * Math.sqrt((said * (1 - said)) / sure.length))
  })
})
