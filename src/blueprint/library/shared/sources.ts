export { failureCatalogue as catalogue } from '../../../facts/fault-catalogue.ts'
