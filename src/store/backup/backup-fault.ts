import { problem, type Problem } from '../../base/problem.ts'
import { failureCode } from '../failure-code.ts'

/** Why a backup could not be written. */
export const backupFault = (where: string, fault: unknown): Problem => {
  const code = failureCode(fault)
  if (code === 'ENOSPC' || code === 'EDQUOT') {
    return problem(
      'disk-full',
      where,
      'The disk is full, so no backup was written',
      'Make room, or name another folder',
    )
  }
  const why = reasons[code] ?? (fault instanceof Error ? fault.message : String(fault))
  if (code in reasons) {
    return problem('not-writable', where, `No backup was written there: ${why}`, 'Name a folder that can be written to')
  }
  return problem(
    'not-backed-up',
    where,
    `No backup was written: ${why}`,
    '“thrum verify” says whether the store itself is damaged',
  )
}

const reasons: Readonly<Record<string, string>> = {
  EACCES: 'permission is denied',
  EPERM: 'permission is denied',
  EROFS: 'it is on a disk that can only be read',
  ENOTDIR: 'a file stands where a folder should be',
  EEXIST: 'a file stands where a folder should be',
  EISDIR: 'a folder stands where the file should be',
}
