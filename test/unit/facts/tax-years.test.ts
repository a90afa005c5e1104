import { describe, expect, it } from 'vitest'
import { regions } from '../../../src/facts/regions.ts'
import { taxNote, taxYearOf } from '../../../src/facts/tax-years.ts'

/** First and last days of tax years as the tax offices name them; from memory. */
describe('the tax year of a day', () => {
  it.each([
    ['UK', '2026-04-05', '2025-04-06', '2026-04-05', '2025/26'],
    ['UK', '2026-04-06', '2026-04-06', '2027-04-05', '2026/27'],
    ['UK', '1999-12-31', '1999-04-06', '2000-04-05', '1999/00'],
    ['AU', '2026-06-30', '2025-07-01', '2026-06-30', '2025/26'],
    ['AU', '2026-07-01', '2026-07-01', '2027-06-30', '2026/27'],
    ['NZ', '2024-03-31', '2023-04-01', '2024-03-31', '2023/24'],
    ['US', '2024-02-29', '2024-01-01', '2024-12-31', '2024'],
    ['CA', '2026-12-31', '2026-01-01', '2026-12-31', '2026'],
    ['EU', '2026-01-01', '2026-01-01', '2026-12-31', '2026'],
  ] as const)('%s %s', (region, day, from, to, name) => {
    expect(taxYearOf(region, day)).toEqual({ from, to, name })
  })

  it.each(regions)('%s: every day of four years lies in its year, and years follow each other', (region) => {
    const days = Array.from({ length: 1461 }, (_, i) => new Date(Date.UTC(2023, 0, 1 + i)).toISOString().slice(0, 10))
    const years = days.map((day) => taxYearOf(region, day))
    days.forEach((day, i) => {
      expect(years[i].from <= day && day <= years[i].to).toBe(true)
      const before = years[i - 1]
      if (before !== undefined && before.from !== years[i].from) expect(before.to).toBe(days[i - 1])
    })
  })

  it('is information, not advice', () => {
    expect(taxNote('UK', '2026/27')).toBe('Information, not advice: ask an adviser. The United Kingdom, as of 2026/27.')
  })
})
