/** Worth buying? From an advert to the most to pay, what to ask, and what to check before paying. */
export { advertSchema, type Advert, type AdvertInput } from './advert.ts'
export type { BuyingTerms } from './advert-job.ts'
export { answerProblems, checkAdvert, parseAdvert } from './check-advert.ts'
export type { BuyingView, QuestionView, SpotCheckView, ToldView } from './buying-view.ts'
export { quickCeiling } from './quick-ceiling.ts'
export { readSellerWords } from './seller-words.ts'
export { buyingView, quickEffort } from './worth-buying.ts'
