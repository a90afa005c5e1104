import { sourceText } from '../../base/source-text.ts'
import { conditionSource, usualBreakHours, usualRepairsSource } from '../../facts/buying.ts'
import { sellerClaims } from '../../facts/seller-claims.ts'
import { sellerQuestionSource } from '../../facts/seller-question.ts'
import { sellerWordsSource } from '../../facts/seller-words.ts'

/** Where the figures come from that buying adds to those of the machine’s own page, each named once. */
export const buyingSources: readonly string[] = [
  ...new Set(
    [
      sellerWordsSource,
      ...Object.values(sellerClaims).map(({ source }) => source),
      sellerQuestionSource,
      conditionSource,
      usualRepairsSource,
      usualBreakHours.source,
    ].map(sourceText),
  ),
]
