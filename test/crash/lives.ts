import { spawn } from 'node:child_process'
import { cp, mkdir, readFile, rm } from 'node:fs/promises'
import { join } from 'node:path'
import { setTimeout as pause } from 'node:timers/promises'
import { fileURLToPath } from 'node:url'
import { build } from 'vite'

const root = fileURLToPath(new URL('../..', import.meta.url))

export type Work = 'append' | 'migrate' | 'photographs' | 'backup'
/** What a life had said before it ended; `endedItself`: nobody had to end it, with what it said of an error. */
export type Life = { readonly said: readonly string[]; readonly endedItself: boolean; readonly error: string }

export type Lives = {
  /** Starts a life and ends it with SIGKILL so long after it is ready. */
  readonly live: (work: Work, folder: string, seed: number, endAfterMs: number) => Promise<Life>
  /**
   * Starts one life and holds it still at one moment after another, the pauses between them given; each time what is on the disk is copied.
   * A process that is held still has written exactly what one that is ended there has, and costs no start.
   */
  readonly hold: (
    work: Work,
    folder: string,
    seed: number,
    pausesMs: readonly number[],
    look: (copy: string, said: readonly string[]) => Promise<void>,
  ) => Promise<string>
  readonly script: string
  readonly remove: () => Promise<void>
}

/** Bundles a life into one folder of plain JavaScript, so that each starts in a tenth of a second. */
export const makeLives = async (): Promise<Lives> => {
  const folder = join(root, '.tmp', `crash-${process.pid}`)
  await mkdir(folder, { recursive: true })
  await build({
    configFile: false,
    logLevel: 'error',
    root,
    ssr: { noExternal: true, external: ['libsql', 'sharp', 'pg'] },
    build: {
      ssr: 'test/crash/life.ts',
      outDir: folder,
      target: 'node20',
      rolldownOptions: { output: { entryFileNames: 'life.mjs' } },
    },
  })
  const script = join(folder, 'life.mjs')
  return {
    live: (...asked) => live(script, ...asked),
    hold: (...asked) => hold(script, ...asked),
    script,
    remove: () => rm(folder, { recursive: true, force: true }),
  }
}

const live = (script: string, work: Work, folder: string, seed: number, endAfterMs: number): Promise<Life> =>
  new Promise((resolve, reject) => {
    const child = spawn(process.execPath, [script, work, folder, String(seed)], { stdio: ['ignore', 'pipe', 'pipe'] })
    let text = ''
    let error = ''
    let isReady = false
    child.stdout.setEncoding('utf8').on('data', (chunk: string) => {
      text += chunk
      if (isReady || !text.includes('ready\n')) return
      isReady = true
      setTimeout(() => child.kill('SIGKILL'), endAfterMs)
    })
    child.stderr.setEncoding('utf8').on('data', (chunk: string) => (error += chunk))
    child.on('error', reject)
    // A line that was cut off was not yet said.
    child.on('close', (_code, signal) =>
      resolve({ said: text.split('\n').slice(0, -1), endedItself: signal !== 'SIGKILL', error }),
    )
  })

const hold = async (
  script: string,
  ...[work, folder, seed, pausesMs, look]: Parameters<Lives['hold']>
): Promise<string> => {
  const child = spawn(process.execPath, [script, work, folder, String(seed)], { stdio: ['ignore', 'pipe', 'pipe'] })
  let text = ''
  let error = ''
  child.stdout.setEncoding('utf8').on('data', (chunk: string) => (text += chunk))
  child.stderr.setEncoding('utf8').on('data', (chunk: string) => (error += chunk))
  const ended = new Promise((resolve) => child.on('close', resolve))
  while (!text.includes('ready\n') && child.exitCode === null) await pause(2)
  for (const [index, ms] of pausesMs.entries()) {
    await pause(ms)
    child.kill('SIGSTOP')
    await stopped(child.pid!)
    const said = text.split('\n').slice(0, -1)
    const copy = `${folder}-held-${index}`
    await cp(folder, copy, { recursive: true })
    await look(copy, said)
    await rm(copy, { recursive: true, force: true })
    child.kill('SIGCONT')
  }
  child.kill('SIGKILL')
  await ended
  return error
}

/** Fulfilled when all threads of a process stand still (proc(5): state T). */
const stopped = async (pid: number): Promise<void> => {
  for (;;) {
    const stat = await readFile(`/proc/${pid}/stat`, 'utf8').catch(() => '')
    if (stat === '' || stat.slice(stat.lastIndexOf(')') + 2).startsWith('T')) return
    await pause(1)
  }
}
