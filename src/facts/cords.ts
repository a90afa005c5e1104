import type { Source } from '../base/source.ts'

/** IEC 60335-1, Table 11: smallest conductor of a supply cord by the appliance's rated current. From the smallest up. */
export const applianceCordAreas = [
  { aboveA: 0.2, upToA: 3, areaMm2: 0.5, longestM: 2 },
  { aboveA: 3, upToA: 6, areaMm2: 0.75, longestM: null },
  { aboveA: 6, upToA: 10, areaMm2: 1.0, longestM: null },
  { aboveA: 10, upToA: 16, areaMm2: 1.5, longestM: null },
  { aboveA: 16, upToA: 25, areaMm2: 2.5, longestM: null },
] as const
export const applianceCordSource: Source = {
  title: 'IEC 60335-1, smallest cross-section of supply cords',
  clause: '25.8, Table 11, as reprinted in an appliance manual; 0.5 mm² up to 2 m only',
  url: 'https://manualslib.mx/manual/604986/Calpeda-Nm-Serie.html?page=87',
  evidence: 'retrieved',
}

/** UK flexible cords: current-carrying capacity, and voltage drop out and return at 60 °C in mV per ampere and metre. */
export const ukCords = [
  { areaMm2: 0.5, capacityA: 3, dropMvPerAm: 93 },
  { areaMm2: 0.75, capacityA: 6, dropMvPerAm: 62 },
  { areaMm2: 1.0, capacityA: 10, dropMvPerAm: 46 },
  { areaMm2: 1.25, capacityA: 13, dropMvPerAm: 37 },
  { areaMm2: 1.5, capacityA: 16, dropMvPerAm: 32 },
  { areaMm2: 2.5, capacityA: 25, dropMvPerAm: 19 },
] as const
export const ukCapacitySource: Source = {
  title: 'BS 7671, current-carrying capacity of flexible cords',
  clause: 'Table 4F3A, single phase',
  url: 'https://www.rm-electrical.com/technical-resource/pvc-flexes/',
  evidence: 'retrieved',
}
export const ukDropSource: Source = {
  title: 'BS 7671, voltage drop of flexible cords',
  clause: 'Table 4F3B, single phase, conductor at 60 °C',
  url: 'https://www.cse-distributors.co.uk/cable/technical-tables-useful-info/table-4f3b.html',
  evidence: 'retrieved',
}
/** The temperature that the table of voltage drop is for. */
export const dropTemperatureC = 60

/** American flexible cords, two conductors carrying current (an earth does not count). */
export const americanCords = [
  { awg: 18, capacityA: 10 },
  { awg: 17, capacityA: 12 },
  { awg: 16, capacityA: 13 },
  { awg: 14, capacityA: 18 },
] as const
export const americanCapacitySource: Source = {
  title: 'NEC, ampacity of flexible cords, two conductors carrying current; at least 18 AWG',
  clause: '400.5(A)(1), quoted in an appliance standard',
  url: 'https://bbs.angui.org/thread-1137-2-1.html',
  evidence: 'retrieved',
}

export type CordFamily = 'harmonised' | 'american'

/**
 * Types of cord. `upToKg`: heaviest appliance it may be on, null for any. `duty` too light: not for a vacuum cleaner at all.
 * Harmonised code and IEC type side by side.
 */
export const cordTypes = [
  { id: 'H03VV-F', family: 'harmonised', sheath: 'light PVC, round', upToKg: 3, tooLight: false },
  { id: 'H03VVH2-F', family: 'harmonised', sheath: 'light PVC, flat', upToKg: 3, tooLight: false },
  { id: 'H05VV-F', family: 'harmonised', sheath: 'ordinary PVC, round', upToKg: null, tooLight: false },
  { id: 'H05VVH2-F', family: 'harmonised', sheath: 'ordinary PVC, flat', upToKg: null, tooLight: false },
  { id: 'H05RR-F', family: 'harmonised', sheath: 'ordinary rubber', upToKg: null, tooLight: false },
  { id: 'H05RN-F', family: 'harmonised', sheath: 'polychloroprene', upToKg: null, tooLight: false },
  { id: 'H07RN-F', family: 'harmonised', sheath: 'heavy polychloroprene', upToKg: null, tooLight: false },
  { id: 'H03VH-H', family: 'harmonised', sheath: 'flat twin without a sheath', upToKg: null, tooLight: true },
  { id: 'SVT', family: 'american', sheath: 'thermoplastic, made for vacuum cleaners', upToKg: null, tooLight: false },
  { id: 'SV', family: 'american', sheath: 'rubber, made for vacuum cleaners', upToKg: null, tooLight: false },
  { id: 'SJT', family: 'american', sheath: 'thermoplastic, hard service', upToKg: null, tooLight: false },
  { id: 'SJ', family: 'american', sheath: 'rubber, hard service', upToKg: null, tooLight: false },
  { id: 'SPT-1', family: 'american', sheath: 'parallel twin', upToKg: null, tooLight: true },
  { id: 'SPT-2', family: 'american', sheath: 'parallel twin, thicker', upToKg: null, tooLight: true },
] as const
export const cordTypeSources: Readonly<Record<CordFamily, Source>> = {
  harmonised: {
    title: 'EN 60335-1, lightest types of supply cord: light PVC up to 3 kg, ordinary PVC or rubber above',
    clause: '25.7; harmonised codes of the IEC types from memory',
    url: 'http://bbs.angui.org/thread-3799-1-1.html',
    evidence: 'retrieved',
  },
  american: {
    title: 'SVT is the usual cord of vacuum cleaners; parallel cords are too light (from memory)',
    url: 'https://digikey.cn/zh/ptm/q/qualtek/power-cords/tutorial?slide=4',
    evidence: 'retrieved',
  },
}

/** Pull and creep of a cord anchorage, by the appliance's mass. Newton, metre. From the lightest up. */
export const anchoragePull = [
  { upToKg: 1, pullN: 30 },
  { upToKg: 4, pullN: 60 },
  { upToKg: null, pullN: 100 },
] as const
export const anchorage = {
  mostCreepMm: 2,
  source: {
    title: 'IEC 60335-1, cord anchorage: 25 pulls, at most 2 mm of creep; the bench makes one firm pull',
    clause: '25.15',
    url: 'http://hctestequipment.com/2-2-15-power-cord-tensile-twist-test-machine/',
    evidence: 'retrieved',
  } as Source,
} as const

/** The longest appliance lead that is taken for one, in metre. */
export const longestLead = {
  lengthM: 100,
  source: { title: 'Leads of appliances with their extension are below 100 m', evidence: 'judgement' } as Source,
} as const
