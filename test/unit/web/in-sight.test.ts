import { describe, expect, it } from 'vitest'
import { isInSight } from '../../../src/web/parts/in-sight.ts'

describe('what came of a step is in sight', () => {
  // A window of 640 px; edges in pixels from its top, as getBoundingClientRect gives them (CSSOM View Module).
  it.each([
    ['whole in the window', 10, 300, true],
    ['cut off below', 500, 700, false],
    ['above the window', -120, -10, false],
    ['cut off above', -20, 200, false],
    ['taller than the window, from near its top', 40, 900, true],
    ['taller than the window, from near its end', 600, 1500, false],
  ])('%s', (_where, top, bottom, expected) => {
    expect(isInSight({ top, bottom }, 640)).toBe(expected)
  })
})
