import { mkdtemp, rm } from 'node:fs/promises'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import sharp from 'sharp'
import { valueOf } from '../../src/base/result.ts'
import type { NoteContentInput } from '../../src/bench/note.ts'
import { makeBackup, type MadeBackup } from '../../src/store/backup/make-backup.ts'
import { checkStore, type CheckedStore } from '../../src/store/backup/check-store.ts'
import { photosInFolder } from '../../src/store/copy/kept-photos.ts'
import { readEverything } from '../../src/store/copy/read-everything.ts'
import type { KeptRecord } from '../../src/store/copy/records.ts'
import { filePhotoStore } from '../../src/store/files/photo-store.ts'
import { openForReading } from '../../src/store/sqlite/open-for-reading.ts'
import { openStore } from '../../src/store/sqlite/open-store.ts'
import { sqliteIntegrity } from '../../src/store/sqlite/integrity.ts'
import { added, content, log } from './notes.ts'

/** A folder of its own that is taken away at the end. */
export const tempFolder = async (): Promise<{ readonly folder: string; readonly remove: () => Promise<void> }> => {
  const folder = await mkdtemp(join(tmpdir(), 'thrum-nothing-lost-'))
  return { folder, remove: () => rm(folder, { recursive: true, force: true }) }
}

/** A small picture that is a different one for every number. */
export const picture = (number: number): Promise<Buffer> =>
  sharp({
    create: { width: 64 + (number % 64), height: 48, channels: 3, background: { r: number % 256, g: 90, b: 160 } },
  })
    .jpeg()
    .toBuffer()

const said = (text: string): NoteContentInput => ({ kind: 'said', text })

/** A store with a few of everything: two machines, a part of the shelf, spending, a change of the settings, a photograph. Gives its id. */
export const fillSmall = async (folder: string): Promise<string> => {
  const store = valueOf(await openStore({ folder }))
  const kept = await filePhotoStore(join(folder, 'photos')).put(await picture(1))
  if (kept.kind !== 'kept') throw new Error('the photograph was not kept')
  const photo = content({ kind: 'photo', photo: kept.photo.id, about: { kind: 'machine' } })
  await store.notes.add('own', 'm1', log([added(), said('Görel’s “best” 😀\nline two'), photo]))
  await store.notes.add('own', 'm2', log([added({ name: 'Second' }), said('x'.repeat(1500))], 'm2'))
  await store.logs.write('own', [
    {
      kind: 'expense',
      id: 'e1',
      expectedVersion: 0,
      entries: [
        {
          id: 'a',
          log: 'e1',
          seq: 1,
          at: '2026-03-15T10:00:00.000Z',
          content: { kind: 'spent', day: '2026-03-15', what: 'Solder', costMinor: 799, currency: 'GBP', minutes: 12.5 },
        },
      ],
    },
  ])
  await store.settings.add({ at: '2026-03-14T12:00:00.000Z', change: { hourMinor: 900 } })
  await store.close()
  return kept.photo.id
}

/** All that a store holds. */
export const everythingIn = async (folder: string): Promise<readonly KeptRecord[]> => {
  const db = valueOf(openForReading(folder))
  const records: KeptRecord[] = []
  for await (const record of readEverything(db)) records.push(record)
  await db.destroy()
  return records
}

export const backUp = async (folder: string, file: string): Promise<MadeBackup> => {
  const db = valueOf(openForReading(folder))
  try {
    return valueOf(
      await makeBackup(
        { db, photos: () => photosInFolder(join(folder, 'photos')), madeAt: '2026-03-18T06:00:00.000Z' },
        file,
      ),
    )
  } finally {
    await db.destroy()
  }
}

export const lookOver = async (folder: string): Promise<CheckedStore> => {
  const db = valueOf(openForReading(folder))
  try {
    return await checkStore({ db, photos: () => photosInFolder(join(folder, 'photos')), integrity: sqliteIntegrity })
  } finally {
    await db.destroy()
  }
}
