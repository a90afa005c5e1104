/** A word of sellers for a part. */
export type SalePartWord = {
  readonly id: string
  /** As sellers write it, one and many. */
  readonly words: string
  /** Parts of a blueprint that it means, by the end of their ids; none: a part that is no part of its own there. */
  readonly parts: readonly string[]
}

const word = (id: string, words: string, ...parts: readonly string[]): SalePartWord => ({ id, words, parts })

/** What sellers call the parts of a machine. Common practice of the trade. The names of a blueprint's own parts come to these. */
export const salePartWords: readonly SalePartWord[] = Object.freeze([
  word('belt', 'belts?', 'belt'),
  word('filter', 'filters?', 'filter'),
  word('bag', 'bags?', 'bag'),
  word('hose', 'hoses?', 'hose'),
  word('flex', 'flex|(?:mains |power )?(?:lead|cable|cord)s?', 'flex'),
  word('plug', 'plugs?', 'plug'),
  word('fuse', 'fuses?', 'fuse'),
  word('motor', 'motors?', 'motor'),
  word('carbon-brushes', 'carbon brushes|motor brushes|carbons|brushes', 'carbon-brushes'),
  word(
    'brush-roll',
    '(?:brush|beater)[- ]?(?:rolls?|bars?)|roller brush(?:es)?|rollers?|roll(?! (?:freely|easily|well|away))|agitator',
    'brush-roll',
  ),
  word('bearings', 'bearings?'),
  word('switch', 'switch(?:es)?', 'switch'),
  word('board', '(?:control |circuit )?boards?|pcb', 'board'),
  word('seal', 'seals?|gaskets?', 'seal'),
  word('wheels', 'wheels?|castors?|casters?', 'wheels'),
  word('lamp', 'lamps?|bulbs?|headlights?|headlamps?', 'lamp', 'headlamp'),
  word('floor-head', '(?:floor |cleaner )?heads?|floor tools?', 'floor-head'),
  word('wand', 'wands?|tubes?', 'wand'),
  word('tools', 'tools|attachments|accessories'),
  word('casing', 'casings?|body(?:work)?|shells?|outside', 'casing'),
  word('bin', 'bins?|dust container', 'bin'),
  word('cyclone', 'cyclones?|separators?', 'cyclone'),
  word('reel', '(?:cord |cable |flex )?reels?|rewind', 'cord-reel'),
  word('clutch', 'clutch', 'clutch'),
  word('fan', 'fans?', 'fan'),
  word('sole-plate', 'sole ?plates?', 'sole-plate'),
  word('wiring', 'wiring|wires|looms?', 'loom', 'wires'),
  word('handle', 'handles?'),
  word('cover', 'covers?|lids?|doors?'),
  word('latch', 'latch(?:es)?|catch(?:es)?|clips?', 'latch', 'catch'),
])

/** What is said of a part. `works` is told by trying it, `as-new` by grading it, the others by notes of work. */
export type PartSaying = 'as-new' | 'new' | 'cleaned' | 'mended' | 'works'

/** The words of each, looked for in this order. Common practice of the trade. */
export const partSayings: readonly (readonly [PartSaying, RegExp])[] = Object.freeze([
  [
    'as-new',
    /\b(?:(?:as |just )?(?:as|like|good as|nearly|almost) new|mint|immaculate|pristine|flawless|unmarked)\b/gi,
  ],
  [
    'new',
    /\b(?:(?:has |have )?(?:is |are |was |were |been )?(?:brand[- ]new|new|fresh|renewed|replaced|replacement|changed|swapped|installed|fitted(?! (?:back|again))|put (?:on|in)(?! (?:again|back))))\b/gi,
  ],
  [
    'cleaned',
    /\b(?:(?:deep[- ]|fully |freshly |thoroughly )?(?:cleaned|washed|freed|cleared|combed|wiped|rinsed|unblocked)|spotless|clean(?![- ]air))\b/gi,
  ],
  [
    'mended',
    /\b(?:repaired|mended|fixed|rewired|re-?soldered|adjusted|rebuilt|serviced|overhauled|refurbished|reconditioned)\b/gi,
  ],
  [
    'works',
    /\b(?:(?:fully |bench[- ])?(?:tested|checked(?: over)?)|(?:fully |in (?:full |good )?)?working(?: order| well| perfectly| fine)?|works(?: well| fine| perfectly)?|runs|turns|spins)\b/gi,
  ],
])

/** What would bear each out. */
export const partSayingNeeds: Readonly<Record<PartSaying, string>> = {
  'as-new': 'a grade A of that part',
  new: 'a note of the repair with a new part',
  cleaned: 'a note of the cleaning of that part',
  mended: 'a note of the repair of that part',
  works: 'a note that it was tried and is good, or a run of the whole machine',
}

/** Words of work done. Judgement. */
export const workWords =
  /\b(?:replaced|changed|renewed|fitted|repaired|mended|fixed|rewired|re-?soldered|oiled|greased|lubricated|polished|checked|tested|tried|stripped|rebuilt|re-?built|sharpened|adjusted|aligned|unblocked|freed|tightened|glued|upgraded|inspected|serviced|overhauled|washed|cleaned|sanitised|sanitized|disinfected|deodorised|dried|measured|done up|has had|taken apart|put together)\b/i

/** Words of what happened to a machine before. Judgement. */
export const historyWords =
  /\b(?:pets?|dogs?|cats?|smok(?:e|er|ers|ing)|non-?smok\w*|owners?|owned|used|bought|purchased|inherited|stored|kept|lived|never|always|years? old|months? old|since new|from new|cost(?:s|ing)? .{0,12}new|one home|family|grand\w+|holiday home|spare room|ex-?(?:display|hotel|rental))\b/i
