import { readdir, readFile } from 'node:fs/promises'
import { extname, join, relative, sep } from 'node:path'
import type { Context, MiddlewareHandler } from 'hono'

type StaticFile = { readonly bytes: Uint8Array<ArrayBuffer>; readonly type: string; readonly cache: string }

/** The built pages by their path below the address, such as `/index.html`. */
export type StaticFiles = ReadonlyMap<string, StaticFile>

const types: Readonly<Record<string, string>> = {
  '.css': 'text/css; charset=utf-8',
  '.html': 'text/html; charset=utf-8',
  '.ico': 'image/x-icon',
  '.js': 'text/javascript; charset=utf-8',
  '.json': 'application/json',
  '.map': 'application/json',
  '.png': 'image/png',
  '.svg': 'image/svg+xml',
  '.txt': 'text/plain; charset=utf-8',
  '.wasm': 'application/wasm',
  '.webmanifest': 'application/manifest+json',
  '.woff2': 'font/woff2',
}

/**
 * Reads the built pages into memory. Only what was found in the folder can be asked for, so no address leads out of it.
 * An empty map when there is no such folder.
 */
export const readStaticFiles = async (folder: string): Promise<StaticFiles> => {
  const entries = await readdir(folder, { recursive: true, withFileTypes: true }).catch(() => [])
  const files = new Map<string, StaticFile>()
  for (const entry of entries) {
    if (!entry.isFile()) continue
    const file = join(entry.parentPath, entry.name)
    const path = `/${relative(folder, file).split(sep).join('/')}`
    const bytes = new Uint8Array(await readFile(file))
    files.set(path, { bytes, type: types[extname(file)] ?? 'application/octet-stream', cache: cacheFor(path) })
  }
  return files
}

/** Files under assets/ carry a hash of their content in their name, so they never change. */
const cacheFor = (path: string): string =>
  path.startsWith('/assets/') ? 'public, max-age=31536000, immutable' : 'no-cache'

/**
 * Serves the pages. An address that is no file is one of the program's own pages, all of which start from index.html;
 * one that names a file which is not there is not found. The build puts files at the top or under assets/ alone, so an id
 * with a dot, such as `/blueprints/upright.120`, is never taken for one.
 */
export const servePages = (files: StaticFiles): MiddlewareHandler => {
  const index = files.get('/index.html')
  return async (c, next) => {
    const file = files.get(c.req.path)
    if (file !== undefined) return send(c, file)
    if (namesFile(c.req.path)) return next()
    return index === undefined ? c.text(notBuilt, 404) : send(c, index)
  }
}

const namesFile = (path: string): boolean =>
  path.startsWith('/assets/') || (path.lastIndexOf('/') === 0 && extname(path) !== '')

const notBuilt = 'The pages have not been built. Run: npm run build\n'

const send = (c: Context, file: StaticFile): Response =>
  c.body(file.bytes, 200, { 'content-type': file.type, 'cache-control': file.cache })
