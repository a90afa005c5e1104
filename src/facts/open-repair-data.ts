import type { Source } from '../base/source.ts'
import type { Region } from './regions.ts'

export const openRepairSource: Source = {
  title: 'Open Repair Data Standard',
  edition: '0.3 (7 December 2021), CC BY-SA 4.0',
  clause: 'field names and data types; product category, repair status and repair barrier values',
  url: 'https://standard.openrepair.org/standard.html',
  evidence: 'retrieved',
}

/**
 * The columns of a file, in the order of the files published by the standard's own alliance (tableschema of July 2025). The standard
 * calls `product_age` “product_age_estimate” in its table and `product_age` in its change log and files; the files' name is used.
 */
export const openRepairColumns = [
  'id',
  'data_provider',
  'country',
  'partner_product_category',
  'product_category',
  'product_category_id',
  'brand',
  'year_of_manufacture',
  'product_age',
  'repair_status',
  'repair_barrier_if_end_of_life',
  'group_identifier',
  'event_date',
  'problem',
] as const
export type OpenRepairColumn = (typeof openRepairColumns)[number]

/** Columns of fields that the standard requires; a value may still be empty where nobody knows it. */
export const openRepairRequired: readonly OpenRepairColumn[] = [
  'id',
  'data_provider',
  'country',
  'partner_product_category',
  'repair_status',
  'event_date',
  'problem',
]

/** What came of the attempt, by its code. */
export const repairStatuses = ['Unknown', 'Fixed', 'Repairable', 'End of life'] as const
export type RepairStatus = (typeof repairStatuses)[number]

/** What stood in the way, by its code less one. */
export const repairBarriers = [
  'Spare parts not available',
  'Spare parts too expensive',
  'No way to open product',
  'Repair information not available',
  'Lack of equipment',
  'Item too worn out',
] as const
export type RepairBarrier = (typeof repairBarriers)[number]

/** The same barriers in the words of the standard's text and of the published table schema. */
export const barrierSynonyms: Readonly<Record<string, RepairBarrier>> = {
  'No way to open the product': 'No way to open product',
  'Product too worn out': 'Item too worn out',
  'Too worn out': 'Item too worn out',
}

/** The category of vacuum cleaners. */
export const vacuumCategory = { id: 34, name: 'Vacuum' } as const

/** All product categories; an id is the place, from 1. */
export const productCategories: readonly string[] = Object.freeze([
  'Aircon/dehumidifier',
  'Battery/charger/adapter',
  'Decorative or safety lights',
  'Desktop computer',
  'Digital compact camera',
  'DSLR/video camera',
  'Fan',
  'Flat screen',
  'Hair & beauty item',
  'Handheld entertainment device',
  'Headphones',
  'Hi-Fi integrated',
  'Hi-Fi separates',
  'Kettle',
  'Lamp',
  'Laptop',
  'Large home electrical',
  'Misc',
  'Mobile',
  'Musical instrument',
  'Paper shredder',
  'PC accessory',
  'Portable radio',
  'Power tool',
  'Printer/scanner',
  'Projector',
  'Sewing machine',
  'Small home electrical',
  'Small kitchen item',
  'Tablet',
  'Toaster',
  'Toy',
  'TV and gaming-related accessories',
  vacuumCategory.name,
  'Watch/clock',
  'Coffee maker',
  'Food processor',
  'Games console',
  'Hair dryer',
  'Iron',
])

/** The country of a region by ISO 3166-1 alpha-3 (from memory); the European Union is not one country, so it is left empty. */
export const countryOfRegion: Readonly<Record<Region, string>> = {
  UK: 'GBR',
  EU: '',
  AU: 'AUS',
  NZ: 'NZL',
  US: 'USA',
  CA: 'CAN',
}
