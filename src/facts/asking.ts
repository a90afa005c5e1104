import type { Source } from '../base/source.ts'

const judged = (clause: string): Source => ({
  title: 'What makes a second-hand machine fetch more or less, UK street level 2024–26',
  clause,
  evidence: 'judgement',
})

/** The grades of a machine's looks, as the trade gives them. */
export const grades = ['A', 'B', 'C', 'D'] as const
export type Grade = (typeof grades)[number]

/** What each grade fetches beside B, and what it looks like. */
export const gradeFacts: Readonly<Record<Grade, { readonly share: number; readonly name: string }>> = {
  A: { share: 1.1, name: 'like little used: no marks a metre away' },
  B: { share: 1, name: 'light marks' },
  C: { share: 0.85, name: 'worn to look at, works in full' },
  D: { share: 0.6, name: 'shabby or damaged, but safe' },
}

export const gradesSource = judged('asking price by grade: A 1.10, B 1.0, C 0.85, D 0.6 of what such machines fetched')

/** Something that can be done before it is offered. */
export type Improvement = {
  readonly name: string
  /** By what share of the price without it the price goes up. */
  readonly addsShare: number
  /** True where a machine sold cleaned and working has it anyway: without it, it fetches less. */
  readonly isUsual: boolean
  /** Only where the blueprint has a part whose id holds this word. */
  readonly part?: string
  readonly costMinor: number
  readonly minutes: number
  readonly source: Source
}

/** What can be done before it is offered: what each adds, in money of the United Kingdom what it costs, and own minutes. */
export const improvements = {
  cleaned: {
    name: 'Stripped and cleaned',
    addsShare: 0.35,
    isUsual: true,
    costMinor: 200,
    minutes: 60,
    source: judged('cleaned against dusty; a clean takes 45 to 60 minutes and £2 of stuff'),
  },
  'new-filters': {
    name: 'New bag and filters',
    addsShare: 0.1,
    isUsual: true,
    costMinor: 600,
    minutes: 3,
    source: judged('hygiene sells more than polish; bag and filters £6 and up, three minutes'),
  },
  'new-belt': {
    name: 'New belt',
    addsShare: 0.04,
    isUsual: false,
    part: 'belt',
    costMinor: 300,
    minutes: 10,
    source: judged('a flat belt is changed as a matter of course; worth saying in the advert'),
  },
  'proof-printed': {
    name: 'Safety record printed and shown',
    addsShare: 0.05,
    isUsual: false,
    costMinor: 0,
    minutes: 8,
    source: judged('a test with its figures in the advert; eight minutes for the checks'),
  },
} as const satisfies Readonly<Record<string, Improvement>>

export type ImprovementId = keyof typeof improvements
export const improvementIds = Object.keys(improvements) as [ImprovementId, ...ImprovementId[]]
