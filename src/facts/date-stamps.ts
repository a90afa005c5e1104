import type { Source } from '../base/source.ts'

const trade = (clause: string, evidence: Source['evidence']): Source => ({
  title: 'Moulded date stamps of plastic parts',
  clause,
  evidence,
})

/** Kinds of date stamp: what they look like and how they are read. A stamp dates the part, not the machine. */
export const stampKinds = {
  'one-ring': {
    looks: '1 to 12 round the edge, an arrow in the middle with a digit each side',
    read: 'year from the two digits, month where the arrow points',
    source: { ...trade('one ring, split year', 'retrieved'), url: 'manufsolutions.tripod.com' },
  },
  'two-rings': {
    looks: 'a ring of months and a ring of years, apart or one inside the other, each with an arrow or notch',
    read: 'month from one, year from the other',
    source: trade('two rings', 'common practice'),
  },
  'three-rings': {
    looks: 'rings for month, day and year; the day may be two rings, tens and units',
    read: 'a full date; a published reading gave 17 Dec 2005 from rings 1–12, 1–31 and 04–11',
    source: {
      ...trade('three rings; another published reading had month and two rings for the day', 'retrieved'),
      url: 'https://boards.straightdope.com/t/139855',
    },
  },
  dots: {
    looks: 'a year in the middle or heading a column, dots in up to 12 cells',
    read: 'the count of dots is the last month made: 6 dots is June',
    source: trade('dot chart', 'common practice'),
  },
  week: {
    looks: '1 to 52 or quarters of weeks, the year in the middle',
    read: 'week of the year',
    source: trade('weeks', 'common practice'),
  },
  written: {
    looks: 'a date in ink, print or on a label',
    read: 'as written',
    source: trade('labels of motors and boards', 'common practice'),
  },
} as const

/** The rule that joins stamps into a build window, in months, and how many parts it needs. */
export const windowRule = {
  partsNeeded: 3,
  upperMonths: 6,
  replacedAfterMedianMonths: 12,
  replacedAfterPlateMonths: 2,
  donorBeforeMedianMonths: 18,
  source: trade('rule for several parts', 'judgement'),
} as const

const ecodesign: Source = {
  title: 'Regulation (EU) No 666/2013',
  clause: 'Annex I',
  url: 'https://gesetze.legal/eu/vo_eu_2013_666/anhang_i',
  evidence: 'retrieved',
}

/** What the plate and the plug say of the date. Power limits hold for dry machines with an EU or UK label only. */
export const plateClues = {
  over1600W: { limitW: 1600, before: '2014-09-01', source: ecodesign },
  over900W: { limitW: 900, before: '2017-09-01', source: ecodesign },
  ukca: { from: '2021-01-01', source: trade('UKCA mark: 2021 or later', 'from memory') },
  sleevedPins: { from: '1985-01-01', source: trade('sleeved plug pins: after the mid-1980s', 'from memory') },
} as const

/** No machine on a bench is taken to be older: two digits of a year then mean one year only. Judgement. */
export const earliestBuildYear = 1970
