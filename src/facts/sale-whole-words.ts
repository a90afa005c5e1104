/**
 * Words that name no thing of their own: articles, pronouns, auxiliaries, prepositions, conjunctions and the commonest adverbs of
 * English. A closed class, so that a list of them can be whole; nouns are not, and any word that is not here may be one.
 */
export const wordsWithoutThing: ReadonlySet<string> = new Set(
  `a an the this that these those it its itself he she they them their my our your his her i we you who which what there here
  is are was were be been being am has have had having do does did done doing will would can could should may might must
  and or but so if as than then though although because while when where until till unless since
  about after all also always any at back before both by down each either enough even ever every for from in inside into just
  most much near never no nor not now of off often on once only onto out outside over please quite rather really same some still
  such through throughout to today together too under up very via well with within without yet again almost already absolutely
  basically certainly completely definitely easily entirely exactly extremely fully honestly literally nearly nicely perfectly
  practically probably properly simply totally truly usually virtually visually otherwise recently freshly professionally
  thoroughly`.split(/\s+/),
)

/** Words of how something looks or is offered, that name no thing either. Common practice of the trade; a word left out only asks for a look. */
export const sayingWords: ReadonlySet<string> = new Set(
  `look looks looked looking seem seems feel feels appear appears come comes came coming sell sold selling offered kept keep left
  bought got get gets stay stays remain remains run runs work works go goes tested checked cleaned washed repaired serviced
  mended fitted used good great excellent superb fantastic lovely nice beautiful clean fresh perfect brilliant super old little
  tidy smart cheap rare second-hand secondhand pre-owned preowned full genuine original red black white grey`.split(
    /\s+/,
  ),
)

/** Words of sellers for the whole machine, and for its looks as a whole. Common practice of the trade. */
export const wholeWords: ReadonlySet<string> = new Set(
  `machine machines cleaner vacuum vac upright cylinder tub canister stick unit appliance thing everything item whole lot example
  model one condition order state nick appearance finish looks cosmetics cosmetically overall function functions feature features
  suction`.split(/\s+/),
)

/** Words before what a thing belongs to or lies in: the thing is named before them. */
export const ofWords: ReadonlySet<string> = new Set('of for on in at from off inside under by to'.split(' '))
