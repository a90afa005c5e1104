// Sets the program up on a machine that has only Node: packages, then the built program. Uses nothing but Node itself.
import { spawnSync } from 'node:child_process'
import { createHash } from 'node:crypto'
import { existsSync, mkdirSync, readFileSync, readdirSync, statSync, writeFileSync } from 'node:fs'
import { join } from 'node:path'
import { fileURLToPath } from 'node:url'

const root = fileURLToPath(new URL('..', import.meta.url))
const npm = process.platform === 'win32' ? 'npm.cmd' : 'npm'

const run = (command, args) => {
  const { status } = spawnSync(command, args, {
    cwd: root,
    stdio: ['ignore', 2, 2],
    shell: process.platform === 'win32',
  })
  if (status === 0) return
  console.error(
    `\n“${command} ${args.join(' ')}” did not succeed. Its own message stands above; the package registry must be within reach the first time.`,
  )
  process.exit(1)
}

const filesBelow = (folder) =>
  readdirSync(folder, { withFileTypes: true }).flatMap((entry) =>
    entry.isDirectory() ? filesBelow(join(folder, entry.name)) : [join(folder, entry.name)],
  )

const hashOf = (files) => {
  const hash = createHash('sha256')
  for (const file of files.toSorted()) hash.update(file).update(readFileSync(file))
  return hash.digest('hex')
}

const stampFile = join(root, 'dist', '.stamp')
const lock = join(root, 'package-lock.json')

/** Installs the packages when they are missing or older than the lock file. */
export const ensureInstalled = () => {
  const marker = join(root, 'node_modules', '.package-lock.json')
  if (existsSync(marker) && statSync(marker).mtimeMs >= statSync(lock).mtimeMs - 1000) return
  console.error('Installing packages …')
  run(npm, ['ci', '--no-audit', '--no-fund', '--loglevel=error'])
}

/** Builds the program when its sources have changed since the last build. */
export const ensureBuilt = async () => {
  ensureInstalled()
  const sources = [
    ...filesBelow(join(root, 'src')),
    lock,
    join(root, 'vite.config.ts'),
    join(root, 'tsconfig.json'),
    join(root, 'tsconfig.build.json'),
  ]
  const stamp = hashOf(sources)
  if (existsSync(stampFile) && readFileSync(stampFile, 'utf8') === stamp) return
  console.error('Building …')
  run(process.execPath, [join(root, 'node_modules/typescript/bin/tsc'), '-p', 'tsconfig.build.json'])
  run(process.execPath, [join(root, 'node_modules/vite/bin/vite.js'), 'build', '--logLevel', 'warn'])
  mkdirSync(join(root, 'dist'), { recursive: true })
  writeFileSync(stampFile, stamp)
}
