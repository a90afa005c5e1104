import { readdir, rename, rmdir } from 'node:fs/promises'
import { dirname } from 'node:path'
import { problem, type Problem } from '../../base/problem.ts'
import { syncFolder } from '../files/whole-file.ts'

/** Whether a folder holds nothing, or is not there. */
export const isEmptyFolder = async (folder: string): Promise<boolean> => {
  try {
    return (await readdir(folder)).length === 0
  } catch (fault) {
    return fault instanceof Error && 'code' in fault && fault.code === 'ENOENT'
  }
}

export const notEmpty = (folder: string): Problem =>
  problem(
    'not-empty',
    folder,
    'There is something there already, and only an empty folder is filled',
    'Name another folder, or move away what is there',
  )

/** Gives a folder that was filled its name. An empty one of that name may be there; where one is not empty any more it fails. */
export const giveName = async (beside: string, target: string): Promise<void> => {
  await syncFolder(beside)
  await rmdir(target).catch((fault: NodeJS.ErrnoException) => {
    if (fault.code !== 'ENOENT') throw fault
  })
  await rename(beside, target)
  await syncFolder(dirname(target))
}
