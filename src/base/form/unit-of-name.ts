/** Units that the names of quantities end in, the longer endings before those they end in themselves. */
const units: readonly (readonly [ending: RegExp, words: string])[] = [
  [/M3PerS$/, 'in cubic metres a second'],
  [/KgPerM3$/, 'in kilograms a cubic metre'],
  [/M2$/, 'in square metres'],
  [/[mM]inor(PerDay)?$/, 'in minor units such as pence, 450 for 4.50'],
  [/Ohm$|^ohm$/, 'in ohms'],
  [/Min$|^minutes$/, 'in minutes'],
  [/Years$/, 'in years'],
  [/Days$|^days$/, 'in days'],
  [/Hours$/, 'in hours'],
  [/Km$/, 'in kilometres'],
  [/Kg$/, 'in kilograms'],
  [/Hz$/, 'in hertz'],
  [/Pa$/, 'in pascals'],
  [/Percent$|^percent$/, 'in per cent'],
  [/Share$|^probability$/, 'as a share, 0.5 for a half'],
  [/Rad$/, 'in radians'],
  [/[a-z]V$/, 'in volts'],
  [/[a-z]W$/, 'in watts'],
  [/[a-z]A$/, 'in amperes'],
  [/[a-z]F$/, 'in farads'],
  [/[a-z]H$/, 'in henries'],
  [/[a-z]C$/, 'in degrees Celsius'],
  [/[a-z]M$/, 'in metres'],
  [/[a-z]Ms$/, 'in milliseconds'],
  [/[a-z]S$/, 'in seconds'],
]

/** The unit that a field's name carries, in words (`in ohms` for `resistanceOhm`); null where it carries none. */
export const unitOfName = (name: string): string | null => units.find(([ending]) => ending.test(name))?.[1] ?? null
