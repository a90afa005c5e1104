import { failureCatalogue } from '../../../facts/fault-catalogue.ts'

/** For the few faults whose rate is no row of the catalogue. */
export const catalogue = failureCatalogue
