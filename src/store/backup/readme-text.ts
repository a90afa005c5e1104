/** What stands in every backup and export, for whoever opens it without the program. */
export const readmeText = (of: 'backup' | 'export'): string => [first, ...files, ...(of === 'backup' ? manifest : tables), '', ...forms, '', ...(of === 'backup' ? back : [])].join('\n') // prettier-ignore

const first = `Everything a bench of Thrum holds, in open forms. Nothing here needs Thrum to be read.
`

const files = [
  'machines.jsonl    one note about one machine on each line, as JSON (RFC 8259); the notes of a machine follow each other, seq counts them from 1',
  'logs.jsonl        the same for parts of the shelf, adverts weighed, prices seen and spending; "log" says which',
  'people.jsonl      people with names, one on each line, without their passphrases; "by" of a note names one by id',
  'blueprints.jsonl  blueprints of your own, one on each line',
  'settings.jsonl    changes of the settings, one on each line; the later one counts',
  'photographs/      JPEG, and, where that was asked for, the file as it was sent; a note of the kind "photo" names its photograph by the 64 digits that the file\'s name begins with',
]

const manifest = ['manifest.json     when this was made, how much there is of each, and the SHA-256 of every file']

const tables = [
  '*.csv             the same as tables (RFC 4180): machines, every line of the books, the shelf, prices seen, spending, the stock book',
]

const forms = [
  'Times are ISO 8601 in UTC. Names ending in "Minor" are amounts of money in hundredths; "Min" are minutes.',
  'A note is never changed: one of the kind "struck" takes back the note it names.',
]

const back = [
  'To have it back in Thrum:    thrum restore FILE --data FOLDER',
  'To see whether it is whole:  thrum verify FILE',
]
