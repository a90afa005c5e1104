/** What a spare is known by on the shelf: the measures that decide what it fits. Common practice of the trade. */
export type SpecField = {
  readonly id: string
  readonly name: string
  /** Empty for words. */
  readonly unit: string
  /** How far two of the same may differ and still fit: a share of the value for measures; words must be the same. */
  readonly tolerance: number
}

const measure = (id: string, name: string, unit: string, tolerance: number): SpecField => ({
  id,
  name,
  unit,
  tolerance,
})
const words = (id: string, name: string): SpecField => ({ id, name, unit: '', tolerance: 0 })

/** Kinds of part on the shelf, each with what it is measured by; the first are what matters most. */
export const partKinds = {
  motor: {
    name: 'Motor',
    fields: [
      measure('voltageV', 'Voltage', 'V', 0.05),
      measure('powerW', 'Power', 'W', 0.15),
      measure('diameterMm', 'Diameter', 'mm', 0.01),
      measure('heightMm', 'Height', 'mm', 0.02),
      words('mount', 'Mount'),
    ],
  },
  flex: {
    name: 'Flex',
    fields: [
      measure('lengthM', 'Length', 'm', 0.3),
      measure('areaMm2', 'Conductor', 'mm²', 0),
      measure('cores', 'Cores', '', 0),
      words('type', 'Type, as printed on the sheath'),
      words('colours', 'Colours of its cores'),
    ],
  },
  fuse: { name: 'Fuse', fields: [measure('ratingA', 'Rating', 'A', 0), words('type', 'Standard printed on it')] },
  plug: { name: 'Plug', fields: [words('type', 'Type'), measure('fuseA', 'Fuse', 'A', 0)] },
  switch: {
    name: 'Switch',
    fields: [measure('currentA', 'Current', 'A', 0.3), measure('poles', 'Poles', '', 0), words('mount', 'Fits')],
  },
  board: {
    name: 'Control board',
    fields: [words('code', 'Code printed on it'), measure('voltageV', 'Voltage', 'V', 0.05)],
  },
  brushes: {
    name: 'Carbon brushes',
    fields: [
      measure('widthMm', 'Width', 'mm', 0.02),
      measure('thicknessMm', 'Thickness', 'mm', 0.02),
      measure('lengthMm', 'Length', 'mm', 0.5),
    ],
  },
  belt: {
    name: 'Belt',
    fields: [
      measure('lengthMm', 'Length round', 'mm', 0.02),
      measure('widthMm', 'Width', 'mm', 0.1),
      words('teeth', 'Flat, round or toothed'),
    ],
  },
  'brush-roll': { name: 'Brush roll', fields: [measure('lengthMm', 'Length', 'mm', 0.005), words('ends', 'Ends')] },
  hose: {
    name: 'Hose',
    fields: [measure('boreMm', 'Bore', 'mm', 0.03), measure('lengthM', 'Length', 'm', 0.3), words('ends', 'Ends')],
  },
  filter: {
    name: 'Filter',
    fields: [
      measure('lengthMm', 'Length', 'mm', 0.02),
      measure('widthMm', 'Width', 'mm', 0.02),
      words('code', 'Code printed on it'),
    ],
  },
  bag: { name: 'Bag', fields: [words('code', 'Code printed on it')] },
  reel: { name: 'Cord reel', fields: [words('code', 'Code printed on it'), measure('lengthM', 'Flex', 'm', 0.3)] },
  head: {
    name: 'Floor head',
    fields: [measure('boreMm', 'Neck', 'mm', 0.03), words('lead', 'With or without a lead')],
  },
  tool: { name: 'Tool or tube', fields: [measure('boreMm', 'Bore', 'mm', 0.03), words('type', 'What it is')] },
  casing: { name: 'Casing part', fields: [words('model', 'Model'), words('colour', 'Colour')] },
  other: { name: 'Something else', fields: [words('type', 'What it is')] },
} as const satisfies Readonly<Record<string, { readonly name: string; readonly fields: readonly SpecField[] }>>

export type PartKind = keyof typeof partKinds
export const partKindIds = Object.keys(partKinds) as [PartKind, ...PartKind[]]
