import type { Source } from '../../../base/source.ts'

/** The failure catalogue; each fault adds its row, and says so where a row is shared out over several faults. */
export const catalogue: Source = { title: 'Trade catalogue of vacuum cleaner failures', evidence: 'judgement' }
