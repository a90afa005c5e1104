import { join } from 'node:path'

/** Where backups are made by themselves unless another folder is named. */
export const backupFolder = (dataFolder: string): string => join(dataFolder, 'backups')

/** How many of them are kept unless said otherwise: a week of working days and two. */
export const backupsKept = 7
