import { expect, it } from 'vitest'
import { makeKnownSummaries } from '../../../src/store/sql/known-summaries.ts'

it('reads a summary anew when it has changed, and only then', () => {
  const known = makeKnownSummaries()
  const first = known('machine', 1, '{"name":"Grey"}')
  expect(first).toEqual({ name: 'Grey' })
  expect(known('machine', 1, '{"name":"Grey"}')).toBe(first)
  expect(known('machine', 1, '{"name":"Blue"}')).toEqual({ name: 'Blue' })
  expect(known('part', 1, '{"name":"Motor"}')).toEqual({ name: 'Motor' })
})

it('keeps no more than it is told to', () => {
  const known = makeKnownSummaries(1)
  const first = known('machine', 1, '{"name":"Grey"}')
  known('machine', 2, '{"name":"Blue"}')
  expect(known('machine', 1, '{"name":"Grey"}')).not.toBe(first)
})
