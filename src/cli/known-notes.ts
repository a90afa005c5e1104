import { ok } from '../base/result.ts'
import { historyNote, markUsage, stampNote } from './history-program.ts'
import type { Noting } from './noting.ts'
import { valueNote, valueOptions } from './value-program.ts'

/** What the machine is reckoned with from here on: `thrum described`, `stamp`, `history` and `value`. */
export const addKnowing = (noting: Noting): void => {
  noting('described <machine> <blueprint>', 'from here on it is read by this blueprint', (_read, [blueprint = '']) =>
    ok({ kind: 'described-by', blueprint }),
  )
  noting('stamp <machine> <part> <mark...>', markUsage, (_read, args) => stampNote(args))
  noting('history <machine>', 'what came to be known of its age, use and make', (_read, _args, options) =>
    historyNote(options),
  )
    .option('--age <years>', 'years since it was made')
    .option('--wear <use>', 'how hard it was used: light, usual, heavy')
    .option('--make <name>', 'the make as it stands on it; goes out with open repair data alone')
  Object.values(valueOptions).reduce(
    (command, [flags, words]) => command.option(flags, words),
    noting('value <machine>', 'what the plan reckons with for this machine from here on', (_read, _args, options) =>
      valueNote(options),
    ),
  )
}
