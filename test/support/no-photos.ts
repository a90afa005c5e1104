import type { PhotoStore } from '../../src/bench/photos/photo-ports.ts'

/** A place of photographs that nothing comes to. */
export const noPhotos: PhotoStore = {
  put: () => Promise.reject(new Error('no photograph is expected here')),
  get: () => Promise.resolve(null),
  has: () => Promise.resolve(false),
}
