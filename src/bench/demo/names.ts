/**
 * Every name of the demonstration's year. All of them are invented for it: there is no such town, maker, model or person. They are odd
 * words put together on purpose, so that nobody is meant.
 */

/** The town, and streets and places in and around it. */
export const places = [
  'Kettlewick Row',
  'Thimbledown',
  'Otterlatch Lane',
  'the Mossgate side',
  'Upper Crumblehithe',
  'Bellbarrow Steps',
  'Quillmarsh End',
  'the old Wickerfold works',
] as const

export const town = 'Crumblehithe'

/** People who sold or gave something. */
export const people = [
  'Mrs Thimblegate',
  'Mr Crookshawl',
  'Ada Fennelbrook',
  'the Puddifern sisters',
  'Old Mr Wagstaple',
  'Jory Lanternhouse',
  'Miss Quenchwell',
  'Bram Oddiecombe',
  'Hester Marlpocket',
  'Wilf Tansybottom',
  'Nan Cobblewright',
  'the Dobbinhurst twins',
  'Captain Sprucewhistle',
  'Ivo Gatherwool',
  'Petra Buttonfield',
  'Mr and Mrs Snailbridge',
] as const

/** Makers, each with the models of theirs by the kind of machine. */
export const makes = [
  'Owlspindle',
  'Fernkettle',
  'Mosswhistle',
  'Tatterplum',
  'Brindlecask',
  'Hobgarth & Daughters',
] as const

/** Model names by blueprint; a machine's model is a maker and one of these. */
export const modelNames = {
  'bagged-upright-two-motors': ['Larkstride 40', 'Larkstride 55'],
  'bagged-upright-one-motor': ['Beltrambler', 'Beltrambler Senior'],
  'bagless-upright': ['Whirlpantry', 'Whirlpantry Mk 2'],
  'bagged-cylinder': ['Low Badger', 'Low Badger Reel'],
  'tub-by-pass': ['Barrelgoose 12', 'Barrelgoose 15'],
} as const

export type YearBlueprint = keyof typeof modelNames

/** Colours that a machine is told apart by. */
export const colours = ['Grey', 'Plum', 'Teal', 'Mustard', 'Navy', 'Beige', 'Bottle-green', 'Black'] as const
