import type { Source } from '../base/source.ts'
import type { Region } from './regions.ts'

/** What the law of a region asks of who sells a used machine: information, not advice. */
type SecondHandDuties = {
  /** Name of the law as it is cited. */
  readonly law: string
  readonly sentences: readonly [string, string]
  readonly sources: readonly Source[]
  readonly recall: RecallList
}

/** The official list in which a machine is looked up by its plate. */
type RecallList = {
  /** Who keeps it, by its official name. */
  readonly authority: string
  readonly list: string
  readonly source: Source
}

/** Said after every pair of sentences. */
export const localRulesDecide = 'Local rules decide.'

const retrieved = (title: string, url: string, clause?: string): Source => ({
  title,
  url,
  ...(clause === undefined ? {} : { clause }),
  evidence: 'retrieved',
})
const memory = (title: string, clause?: string): Source => ({
  title,
  ...(clause === undefined ? {} : { clause }),
  evidence: 'from memory',
})

const uk: SecondHandDuties = {
  law: 'General Product Safety Regulations 2005; Plugs and Sockets etc. (Safety) Regulations 1994',
  sentences: [
    'Who sells in the course of a business supplies only what is safe, and who reconditions a product answers for it as its producer.',
    'It goes out with an approved plug, sleeved pins and the right fuse; test reports are kept, and one that is sold to be repaired is clearly said to be so.',
  ],
  sources: [
    retrieved(
      'General Product Safety Regulations 2005',
      'https://www.legislation.gov.uk/uksi/2005/1803/regulation/2/made',
      'regulation 2',
    ),
    retrieved(
      'Guidance for England, Scotland and Wales: second-hand electrical goods',
      'https://www.businesscompanion.info/en/quick-guides/product-safety/second-hand-electrical-goods',
    ),
  ],
  recall: {
    authority: 'Office for Product Safety and Standards',
    list: 'Product Recalls and Alerts (GOV.UK)',
    source: memory('Office for Product Safety and Standards, Product Recalls and Alerts'),
  },
}

const eu: SecondHandDuties = {
  law: 'Regulation (EU) 2023/988 on general product safety',
  sentences: [
    'A trader makes only safe products available, used, repaired and reconditioned ones included; a private seller is not bound by it.',
    'It leaves out what is to be repaired before use and is clearly marked so; who alters a product substantially answers for it as its manufacturer.',
  ],
  sources: [
    retrieved(
      'Regulation (EU) 2023/988',
      'https://eur-lex.europa.eu/eli/reg/2023/988',
      'Articles 2 and 5; that private sellers are not bound, and Article 13, from commentaries',
    ),
  ],
  recall: {
    authority: 'European Commission',
    list: 'Safety Gate, the EU rapid alert system for dangerous non-food products',
    source: memory('European Commission, Safety Gate'),
  },
}

const au: SecondHandDuties = {
  law: 'electrical safety law of each state, such as the Electrical Safety Act 2002 (Queensland) and the Electricity Safety Act 1998 (Victoria); Australian Consumer Law',
  sentences: [
    'Tested equipment is tested and tagged to AS/NZS 5761; where it was not tested, the buyer is told so, and in Victoria it is labelled as second-hand.',
    'In Queensland it is sold with information on safe use; all states bar the sale of what is under a ban or unsafe.',
  ],
  sources: [
    retrieved(
      'Energy Safe Victoria, second-hand equipment',
      'https://esv.vic.gov.au/technical-information/electrical-appliances-and-equipment/second-hand-equipment/',
    ),
    retrieved(
      'Queensland, selling second-hand',
      'https://www.worksafe.qld.gov.au/safety-and-prevention/hazards/electricity/electrical-products-and-equipment/selling-electrical-equipment/selling-second-hand',
    ),
    memory('Names of the Acts; Competition and Consumer Act 2010', 'Schedule 2'),
  ],
  recall: {
    authority: 'Australian Competition and Consumer Commission',
    list: 'Product Safety Australia, recalls',
    source: memory('Australian Competition and Consumer Commission, Product Safety Australia'),
  },
}

const nz: SecondHandDuties = {
  law: 'Electricity (Safety) Regulations 2010, regulation 80',
  sentences: [
    'A used appliance may be sold only if it is electrically safe.',
    'It counts as safe when it is tested, inspected and tagged to AS/NZS 5761, or disabled and marked to AS/NZS 4701.',
  ],
  sources: [
    retrieved(
      'WorkSafe New Zealand, second-hand appliances',
      'https://worksafe.govt.nz/topic-and-industry/electricity/appliances-and-fittings/second-hand-appliances',
      'regulation 80',
    ),
  ],
  recall: {
    authority: 'Ministry of Business, Innovation and Employment',
    list: 'Product Safety New Zealand, recalled products',
    source: retrieved(
      'Product Safety New Zealand, recalled products',
      'https://productsafety.govt.nz/for-consumers/product-recalls-information-for-consumers',
    ),
  },
}

const us: SecondHandDuties = {
  law: 'Consumer Product Safety Act, section 19 (15 U.S.C. 2068)',
  sentences: [
    'It is unlawful to sell what is under a recall, used or new, whoever sells it.',
    'Used goods need not be tested for safety, but nobody may knowingly sell what does not meet the requirements.',
  ],
  sources: [
    retrieved(
      'Consumer Product Safety Commission, guidelines for retailers',
      'https://www.cpsc.gov/Business--Manufacturing/Recall-Guidance/Guidelines-for-Retailers-and-Reverse-Logistics-Providers',
      'section 19(a)(2)(B) and (C)',
    ),
    retrieved(
      'Consumer Product Safety Commission, resale and thrift stores',
      'https://cpsc.gov/FAQ/ResaleThrift-Stores',
    ),
  ],
  recall: {
    authority: 'U.S. Consumer Product Safety Commission',
    list: 'Recalls',
    source: retrieved('Consumer Product Safety Commission, recalls', 'https://cpsc.gov/FAQ/ResaleThrift-Stores'),
  },
}

const ca: SecondHandDuties = {
  law: 'Canada Consumer Product Safety Act, sections 7 and 8',
  sentences: [
    'Nobody may sell, used or new, what is a danger to human health or safety or is under a recall that was not put right.',
    'Who trades keeps a record of whom a product came from; the provinces ask for an approved mark on what is plugged in.',
  ],
  sources: [
    retrieved(
      'Health Canada, guide to second-hand products',
      'https://www.canada.ca/en/health-canada/services/consumer-product-safety/reports-publications/industry-professionals/industry-guide-second-hand-products-including-children-products/guidance-document.html',
      'sections 7(a) and 8(a)',
    ),
    memory('Canada Consumer Product Safety Act, records', 'section 13; approved marks under provincial electrical law'),
  ],
  recall: {
    authority: 'Health Canada',
    list: 'Recalls and safety alerts (Government of Canada)',
    source: memory('Health Canada, recalls and safety alerts'),
  },
}

/** Duties and recall list by region. */
export const secondHandDuties: Readonly<Record<Region, SecondHandDuties>> = Object.freeze({
  UK: uk,
  EU: eu,
  AU: au,
  NZ: nz,
  US: us,
  CA: ca,
})
