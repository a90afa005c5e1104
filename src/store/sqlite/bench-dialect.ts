import { SqliteAdapter, SqliteDialect } from 'kysely'

/**
 * Kysely's SQLite with the steps of a migration in one transaction, which SQLite can do and Kysely takes it not to: a program that is
 * ended in the middle of a step would leave half of its tables, and no later start could make the step again.
 */
export class BenchDialect extends SqliteDialect {
  override createAdapter(): SqliteAdapter {
    return new WholeStepsAdapter()
  }
}

class WholeStepsAdapter extends SqliteAdapter {
  override get supportsTransactionalDdl(): boolean {
    return true
  }
}
