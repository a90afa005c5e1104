import { createHash } from 'node:crypto'
import { parse } from '../../base/parse.ts'
import { problem, type Problem } from '../../base/problem.ts'
import { ok, refused, type Result } from '../../base/result.ts'
import type { KeptRecord } from '../copy/records.ts'
import { seqProblems } from './log-order.ts'
import { manifestName, manifestSchema, photoName, photoOfName, type Counts, type Manifest } from './manifest.ts'
import { photoMissing } from './photo-problems.ts'
import { fileOfKind, kinds, recordsOf } from './record-lines.ts'
import { makeTally, type Tally } from './tally.ts'
import { linesOfBytes } from './text-lines.ts'
import { openZip, type OpenZip, type ZippedFile } from './zip-reader.ts'

/** What was found in a backup. `counts` is null where it is no backup at all. */
export type CheckedBackup = {
  readonly madeAt: string | null
  readonly counts: Counts | null
  readonly problems: readonly Problem[]
}

/** Reads a backup whole: sums first, then every line by its schema, the order of every log, and the photographs that notes name. */
export const checkBackup = async (file: string): Promise<CheckedBackup> => {
  const opened = await opening(file)
  if (opened.kind === 'refused') return { madeAt: null, counts: null, problems: opened.problems }
  const zip = opened.value
  try {
    const manifest = await readManifest(zip, file)
    if (manifest.kind === 'refused') return { madeAt: null, counts: null, problems: manifest.problems }
    const { madeAt, counts } = manifest.value
    const sums = await sumProblems(zip, manifest.value)
    const inside = await contentProblems(zip, manifest.value)
    return { madeAt, counts, problems: [...sums, ...inside] }
  } finally {
    await zip.close()
  }
}

const opening = async (file: string): Promise<Result<OpenZip>> => {
  try {
    return ok(await openZip(file))
  } catch (fault) {
    const isThere = !(fault instanceof Error && 'code' in fault && fault.code === 'ENOENT')
    return refused(
      isThere
        ? problem('not-a-backup', file, 'This is no backup, or one that was cut off', 'Use another backup')
        : problem('no-such-file', file, 'There is no such file', 'Give the path of a backup'),
    )
  }
}

/** What a backup says it holds; null where it cannot be read. Reads nothing else of it. */
export const countsIn = async (file: string): Promise<Counts | null> => {
  const opened = await opening(file)
  if (opened.kind === 'refused') return null
  try {
    const manifest = await readManifest(opened.value, file)
    return manifest.kind === 'ok' ? manifest.value.counts : null
  } finally {
    await opened.value.close()
  }
}

const readManifest = async (zip: OpenZip, file: string): Promise<Result<Manifest>> => {
  const noBackup = problem('not-a-backup', file, `There is no ${manifestName} in it that can be read`, 'Use another backup') // prettier-ignore
  const inside = zip.files.find(({ name }) => name === manifestName)
  if (inside === undefined) return refused(noBackup)
  try {
    return parse(manifestSchema, JSON.parse(await textOf(inside)) as unknown, manifestName)
  } catch {
    return refused(noBackup)
  }
}

const textOf = async ({ read }: ZippedFile): Promise<string> => {
  const chunks: Uint8Array[] = []
  for await (const chunk of read()) chunks.push(chunk)
  return Buffer.concat(chunks).toString('utf8')
}

const damaged = (where: string, what: string): Problem => problem('damaged-file', where, what, 'Use another backup')

const sumProblems = async (zip: OpenZip, manifest: Manifest): Promise<readonly Problem[]> => {
  const inside = new Map(zip.files.map((file) => [file.name, file]))
  const problems: Problem[] = []
  for (const { name, sha256 } of manifest.files) {
    const file = inside.get(name)
    inside.delete(name)
    if (file === undefined) problems.push(damaged(name, 'This file is missing in it'))
    else if ((await sumOf(file)) !== sha256) problems.push(damaged(name, 'This file is not as it was written'))
  }
  inside.delete(manifestName)
  for (const name of inside.keys()) problems.push(damaged(name, 'This file was not there when it was written'))
  const listed = new Set(manifest.files.map(({ name }) => name))
  for (const name of Object.values(fileOfKind)) {
    if (!listed.has(name)) problems.push(damaged(name, `This file is not in the list of ${manifestName}`))
  }
  return problems
}

/** Null where it cannot be read to its end. */
const sumOf = async ({ read }: ZippedFile): Promise<string | null> => {
  const hash = createHash('sha256')
  try {
    for await (const chunk of read()) hash.update(chunk)
    return hash.digest('hex')
  } catch {
    return null
  }
}

const contentProblems = async (zip: OpenZip, { counts }: Manifest): Promise<readonly Problem[]> => {
  const tally = makeTally()
  const problems: Problem[] = []
  for (const kind of kinds) {
    try {
      for await (const record of recordsIn(zip, kind)) {
        if (record.kind === 'refused') problems.push(...record.problems)
        else problems.push(...counted(tally, record.value))
      }
    } catch {
      problems.push(damaged(fileOfKind[kind], 'This file cannot be read to its end'))
    }
  }
  for (const { name } of zip.files) if (photoOfName(name)?.size === 'large') tally.photograph()
  problems.push(...countProblems(tally.counts(), counts), ...missingPhotos(zip, tally))
  return problems
}

const counted = (tally: Tally, record: KeptRecord): readonly Problem[] => {
  tally.record(record)
  return seqProblems(record)
}

/** The records of one kind in a backup; a line that does not pass is refused. Throws where the file inside is damaged. */
export async function* recordsIn(zip: OpenZip, kind: KeptRecord['kind']): AsyncGenerator<Result<KeptRecord>> {
  const file = zip.files.find(({ name }) => name === fileOfKind[kind])
  if (file !== undefined) yield* recordsOf(kind, linesOfBytes(file.read()))
}

const countProblems = (found: Counts, said: Counts): readonly Problem[] =>
  (Object.keys(said) as (keyof Counts)[])
    .filter((name) => found[name] !== said[name])
    .map((name) => damaged(manifestName, `It tells of ${said[name]} ${name}, and ${found[name]} are there`))

const missingPhotos = (zip: OpenZip, tally: Tally): readonly Problem[] => {
  const there = new Set(zip.files.map(({ name }) => name))
  return [...tally.named()].filter((id) => !there.has(photoName(id, 'large'))).map((id) => photoMissing(id))
}
