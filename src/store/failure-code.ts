/** The code of a failure of the file system or of a database, such as `ENOTDIR`, `SQLITE_FULL` or `53100`; empty when it has none. */
export const failureCode = (fault: unknown): string =>
  fault instanceof Error && 'code' in fault && typeof fault.code === 'string' ? fault.code : ''
