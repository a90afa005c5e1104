import { join } from 'node:path'
import { expect } from 'vitest'
import { filePhotoStore } from '../../src/store/files/photo-store.ts'
import { lookOver } from '../support/filled-store.ts'
import { wordsAfter, type Looks, type Said } from './what-was-said.ts'

/** Every photograph that was said to be kept is there in both sizes; at the whole look also by the sums beside them. */
export const looksAtPhotos: Looks = {
  afterOne: (folder, all) => areThere(folder, all.slice(-1)),
  whole: async (folder, all) => {
    await areThere(folder, all)
    expect((await lookOver(folder)).problems, `seed ${all.at(-1)?.seed}`).toEqual([])
  },
}

const areThere = async (folder: string, all: Said): Promise<void> => {
  const store = filePhotoStore(join(folder, 'photos'))
  for (const { seed, said } of all) {
    for (const id of wordsAfter('photo ', said)) {
      expect(await store.has(id), `seed ${seed}: ${id}`).toBe(true)
      expect(await store.get(id, 'small'), `seed ${seed}: ${id}`).not.toBeNull()
    }
  }
}
