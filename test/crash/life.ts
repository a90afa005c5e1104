import { writeSync } from 'node:fs'
import { join } from 'node:path'
import { startupSnapshot } from 'node:v8'
import { openStore } from '../../src/store/sqlite/open-store.ts'
import { expenseOf, machineOf, noteAt, stepsOf } from './what-is-written.ts'

/*
 * One life of the program, which the test ends at a moment of its choosing. Says on standard output, by a write that returns only when it
 * is done, what the store has answered: a line each. Bundled and started by `lives.ts`, out of a picture of Node's memory in which all
 * modules are read already.
 */
let [folder, seed, turns] = ['', '0', 'Infinity']

const say = (line: string): void => void writeSync(1, `${line}\n`)

const openHere = async () => {
  const opened = await openStore({ folder })
  if (opened.kind === 'refused') throw new Error(JSON.stringify(opened.problems))
  return opened.value
}

const appended = ({ kind }: { readonly kind: string }): void => {
  if (kind !== 'appended') throw new Error(kind)
}

/** Writes machines one after another, a few notes at a time, each followed by two logs that belong together. */
const append = async (): Promise<void> => {
  const store = await openHere()
  say('ready')
  for (let turn = 0; turn < Number(turns); turn++) {
    const machine = machineOf(Number(seed), turn)
    let version = 0
    for (const step of stepsOf(turn)) {
      const notes = Array.from({ length: step - version }, (_, i) => noteAt(machine, version + i + 1))
      appended(
        await (version === 0 ? store.notes.add('own', machine, notes) : store.notes.append(machine, version, notes)),
      )
      version = step
      say(`notes ${turn} ${version}`)
    }
    appended(
      await store.logs.write('own', [
        { kind: 'expense', id: machine, expectedVersion: 0, entries: [expenseOf(machine)] },
        { kind: 'machine', id: `${machine}-b`, expectedVersion: 0, entries: [noteAt(`${machine}-b`, 1)] },
      ]),
    )
    say(`both ${turn}`)
  }
}

/** Brings an older store up to date. */
const migrate = async (): Promise<void> => {
  const store = await openHere()
  say('migrated')
  await store.close()
}

const photographs = async (): Promise<void> => {
  const { filePhotoStore } = await import('../../src/store/files/photo-store.ts')
  const { default: sharp } = await import('sharp')
  const store = filePhotoStore(join(folder, 'photos'))
  for (let turn = 0; turn < Number(turns); turn++) {
    const background = { r: turn % 256, g: Number(seed) % 256, b: Math.floor(Number(seed) / 256) % 256 }
    const picture = await sharp({ create: { width: 80, height: 60, channels: 3, background } })
      .png()
      .toBuffer()
    if (turn === 0) say('ready')
    const outcome = await store.put(picture)
    if (outcome.kind !== 'kept') throw new Error(outcome.kind)
    say(`photo ${outcome.photo.id}`)
  }
}

const backup = async (): Promise<void> => {
  const { makeBackup } = await import('../../src/store/backup/make-backup.ts')
  const { photosInFolder } = await import('../../src/store/copy/kept-photos.ts')
  const { openForReading } = await import('../../src/store/sqlite/open-for-reading.ts')
  const opened = openForReading(folder)
  if (opened.kind === 'refused') throw new Error(JSON.stringify(opened.problems))
  const photos = () => photosInFolder(join(folder, 'photos'))
  say('ready')
  for (let turn = 0; turn < Number(turns); turn++) {
    const madeAt = new Date(Date.UTC(2026, 2, 14) + 1000 * Number(seed) + turn).toISOString()
    const made = await makeBackup({ db: opened.value, photos, madeAt }, join(folder, 'out', 'bench.zip'))
    if (made.kind === 'refused') throw new Error(JSON.stringify(made.problems))
    say(`backup ${madeAt}`)
  }
}

const works: Readonly<Record<string, () => Promise<void>>> = { append, migrate, photographs, backup }

startupSnapshot.setDeserializeMainFunction(() => {
  const [work = '', ...asked] = process.argv.slice(2)
  ;[folder = '', seed = '0', turns = 'Infinity'] = asked
  say('begun')
  void works[work]()
})
