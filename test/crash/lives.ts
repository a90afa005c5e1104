import { execFile, spawn } from 'node:child_process'
import { mkdir, rm } from 'node:fs/promises'
import { join } from 'node:path'
import { fileURLToPath } from 'node:url'
import { promisify } from 'node:util'
import { build, type Plugin } from 'vite'

const root = fileURLToPath(new URL('../..', import.meta.url))

export type Work = 'append' | 'migrate' | 'photographs' | 'backup'
/** What a life had said before it ended; `endedItself`: nobody had to end it, with what it said of an error; how long after it began. */
export type Life = {
  readonly said: readonly string[]
  readonly endedItself: boolean
  readonly error: string
  readonly ms: number
}
/** So long after the life has said so. */
export type Moment = { readonly after: 'begun' | 'ready'; readonly ms: number }

export type Lives = {
  /** Starts a life and ends it with SIGKILL at a moment, unless it has ended by itself before. */
  readonly live: (work: Work, folder: string, seed: number, end: Moment) => Promise<Life>
  /** What Node is started with; what the life is asked follows. */
  readonly args: readonly string[]
  readonly remove: () => Promise<void>
}

/**
 * Bundles a life and keeps a picture of Node's memory once it has read the bundle (nodejs.org/api/cli.html, `--build-snapshot`), so that
 * each life costs little more than a start of Node itself.
 */
export const makeLives = async (): Promise<Lives> => {
  const folder = join(root, '.tmp', `crash-${process.pid}`)
  await mkdir(folder, { recursive: true })
  await build({
    configFile: false,
    logLevel: 'error',
    root,
    plugins: [whenAskedFor(['libsql', 'sharp', 'pg'])],
    ssr: { noExternal: true },
    build: {
      ssr: 'test/crash/life.ts',
      outDir: folder,
      target: 'node20',
      rolldownOptions: { output: { format: 'cjs', codeSplitting: false, entryFileNames: 'life.cjs' } },
    },
  })
  const picture = join(folder, 'life.blob')
  const make = ['--snapshot-blob', picture, '--build-snapshot', join(folder, 'life.cjs')]
  await promisify(execFile)(process.execPath, make)
  // The picture was made this moment; to sum its bytes up at each start takes a tenth of the start.
  const args = ['--no-verify-snapshot-checksum', '--snapshot-blob', picture, 'life']
  return {
    live: (...asked) => live(args, ...asked),
    args,
    remove: () => rm(folder, { recursive: true, force: true }),
  }
}

/** Packages with native code, read when they are first used: they cannot be in a picture of the memory. */
const whenAskedFor = (names: readonly string[]): Plugin => ({
  name: 'read-when-asked-for',
  enforce: 'pre',
  resolveId: (id) => (names.includes(id) ? `\0later:${id}` : null),
  load: (id) => (id.startsWith('\0later:') ? later(id.slice('\0later:'.length)) : null),
})

const later = (name: string): string => `
  import { createRequire } from 'node:module'
  let known
  const it = () => (known ??= createRequire(${JSON.stringify(join(root, 'package.json'))})(${JSON.stringify(name)}))
  export default new Proxy(function () {}, {
    get: (_, key) => it()[key],
    apply: (_, self, args) => it()(...args),
    construct: (_, args) => new (it())(...args),
  })`

const live = (args: readonly string[], ...[work, folder, seed, end]: Parameters<Lives['live']>): Promise<Life> =>
  new Promise((resolve, reject) => {
    const asked = [...args, work, folder, String(seed)]
    const child = spawn(process.execPath, asked, { stdio: ['ignore', 'pipe', 'pipe'] })
    let text = ''
    let error = ''
    let beganMs = 0
    let isCounted = false
    child.stdout.setEncoding('utf8').on('data', (chunk: string) => {
      text += chunk
      if (beganMs === 0) beganMs = performance.now()
      if (isCounted || !text.includes(`${end.after}\n`)) return
      isCounted = true
      if (end.ms < Infinity) setTimeout(() => child.kill('SIGKILL'), end.ms)
    })
    child.stderr.setEncoding('utf8').on('data', (chunk: string) => (error += chunk))
    child.on('error', reject)
    // A line that was cut off was not yet said.
    child.on('close', (_code, signal) =>
      resolve({
        said: text.split('\n').slice(0, -1),
        endedItself: signal !== 'SIGKILL',
        error,
        ms: performance.now() - beganMs,
      }),
    )
  })
