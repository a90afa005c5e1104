// npm run audit: known holes in the packages that the program runs on, and under which licences they are. Fails on a hole of high or critical
// weight and on a licence that is not on the list. Where the registry does not answer, it says so and looks at the licences alone.
import { spawnSync } from 'node:child_process'
import { readFileSync } from 'node:fs'
import { join } from 'node:path'
import { fileURLToPath } from 'node:url'

const root = fileURLToPath(new URL('..', import.meta.url))
const npm = process.platform === 'win32' ? 'npm.cmd' : 'npm'
const patienceMs = 30_000

/** Licences that allow the program to be used, changed and handed on under its own (SPDX identifiers). */
const allowed = new Set([
  '0BSD',
  'Apache-2.0',
  'BSD-2-Clause',
  'BSD-3-Clause',
  'BlueOak-1.0.0',
  'CC0-1.0',
  'ISC',
  'MIT',
  'MIT-0',
  'Unlicense',
  'Zlib',
])
/** Packages whose licence is none of those, and why they may be used all the same. */
const alsoAllowed = {
  'LGPL-3.0-or-later': 'linked as a library that can be exchanged: the image library behind sharp, prebuilt and apart',
  'Bitstream-Vera': 'fonts: free to use and to hand on within other works',
}
/** Packages that name no licence in a form that can be read, and what their licence file says. */
const readInTheirFiles = { jstat: 'MIT', 'png-js': 'MIT', 'dejavu-fonts-ttf': 'Bitstream-Vera' }

/** Every package that is installed for running the program, from the lock file. */
const packages = () => {
  const lock = JSON.parse(readFileSync(join(root, 'package-lock.json'), 'utf8'))
  return Object.entries(lock.packages)
    .filter(([path, one]) => path !== '' && one.dev !== true && one.devOptional !== true)
    .map(([path, one]) => {
      const name = path.replace(/^.*node_modules\//, '')
      return { name, version: one.version, licence: readInTheirFiles[name] ?? licenceOf(path, one) }
    })
}

const licenceOf = (path, { license }) => {
  if (typeof license === 'string') return license
  try {
    const { license: own } = JSON.parse(readFileSync(join(root, path, 'package.json'), 'utf8'))
    return typeof own === 'string' ? own : (own?.type ?? 'not said')
  } catch {
    return 'not said'
  }
}

/** An SPDX expression of names joined by AND and OR, as packages write it. */
const isAllowed = (licence) =>
  licence
    .replace(/[()]/g, '')
    .split(/ OR /)
    .some((either) => either.split(/ AND /).every((one) => allowed.has(one.trim()) || one.trim() in alsoAllowed))

const licences = () => {
  const all = packages()
  const byLicence = Map.groupBy === undefined ? groupBy(all) : Map.groupBy(all, ({ licence }) => licence)
  console.log(`Licences of the ${all.length} packages that the program runs on:`)
  for (const [licence, ones] of [...byLicence].toSorted(([, a], [, b]) => b.length - a.length)) {
    const why = alsoAllowed[licence] === undefined ? '' : ` (${alsoAllowed[licence]})`
    console.log(`  ${licence}: ${ones.length}${why}${isAllowed(licence) ? '' : ' NOT ON THE LIST'}`)
    if (!isAllowed(licence) || why !== '') for (const { name, version } of ones) console.log(`    ${name} ${version}`)
  }
  return all.every(({ licence }) => isAllowed(licence))
}

const groupBy = (all) => {
  const groups = new Map()
  for (const one of all) groups.set(one.licence, [...(groups.get(one.licence) ?? []), one])
  return groups
}

const holes = () => {
  const { stdout, error } = spawnSync(npm, ['audit', '--omit=dev', '--json'], {
    cwd: root,
    encoding: 'utf8',
    timeout: patienceMs,
    shell: process.platform === 'win32',
  })
  const report = parsed(stdout)
  const counts = report?.metadata?.vulnerabilities
  if (counts === undefined) {
    const why = report?.message ?? report?.error?.summary ?? error?.message ?? 'it gave no report'
    console.log(`Known holes: not looked up, for the registry did not answer (${String(why).split('\n')[0]}).`)
    return true
  }
  console.log(
    `Known holes: ${Object.entries(counts)
      .map(([weight, count]) => `${weight} ${count}`)
      .join(', ')}`,
  )
  for (const [name, { severity, range }] of Object.entries(report.vulnerabilities ?? {}))
    console.log(`  ${name} ${range}: ${severity}`)
  return counts.high === 0 && counts.critical === 0
}

const parsed = (text) => {
  try {
    return JSON.parse(text)
  } catch {
    return undefined
  }
}

const [licencesFine, holesFine] = [licences(), holes()]
process.exitCode = licencesFine && holesFine ? 0 : 1
