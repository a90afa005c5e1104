import type { Generated } from 'kysely'

/** What is kept beside a log for lists and books; made from the log. `open` is 0 or 1, `summary` JSON. */
type Projected = {
  readonly open: Generated<number>
  readonly label: Generated<string>
  readonly group_name: Generated<string>
  readonly currency: Generated<string>
  readonly count: Generated<number>
  readonly stock_minor: Generated<number>
  readonly summary: Generated<string | null>
}

/**
 * The tables. `content` is JSON; `seq` numbers a machine's notes from 1; `rank` numbers machines, blueprints of one's own, and
 * changes of the settings, in the order they came in.
 */
export type Tables = {
  readonly machine: {
    readonly rank: Generated<number>
    readonly id: string
    readonly bench: string
    readonly version: number
    /** What the machine brought, and what is known of where it came from; empty for a virtual machine. */
    readonly complaint: Generated<string | null>
    readonly source: Generated<string | null>
    readonly came_day: Generated<string | null>
    readonly left_day: Generated<string | null>
    readonly exit_name: Generated<string | null>
    readonly received_minor: Generated<number>
    readonly cost_minor: Generated<number>
    readonly profit_minor: Generated<number>
    readonly minutes: Generated<number>
    readonly paid_minor: Generated<number>
  } & Projected
  readonly note: {
    readonly machine: string
    readonly id: string
    readonly seq: number
    readonly at: string
    readonly by: Generated<string | null>
    readonly content: string
  }
  readonly own_blueprint: {
    readonly rank: Generated<number>
    readonly id: string
    readonly saved_at: string
    readonly content: string
  }
  /** Logs of parts, adverts, prices and spending. */
  readonly log: {
    readonly rank: Generated<number>
    readonly kind: string
    readonly id: string
    readonly bench: string
    readonly version: number
  } & Projected
  readonly log_entry: {
    readonly kind: string
    readonly log: string
    readonly id: string
    readonly seq: number
    readonly at: string
    readonly by: Generated<string | null>
    readonly content: string
  }
  /** Lines of the books, made from the logs. */
  readonly book_line: {
    readonly kind: string
    readonly log: string
    readonly bench: string
    readonly currency: string
    readonly note: string
    readonly day: string
    readonly month: string
    readonly month_from_6th: string
    readonly account: string
    readonly minor: number
    readonly minutes: number
  }
  /** Sums of the lines by month, kept up by triggers. `month_kind`: calendar, or from-6th. */
  readonly book_month: {
    readonly bench: string
    readonly month_kind: string
    readonly month: string
    readonly currency: string
    readonly account: string
    /** How many lines it is the sum of. */
    readonly lines: number
    readonly minor: number
    /** Thousandths of a minute. */
    readonly milliminutes: number
  }
  /** People with names, and under the id `bench` the one passphrase of a bench without; hashed. */
  readonly person: {
    readonly id: string
    readonly name: string
    readonly role: string
    readonly passphrase: string | null
    readonly added_at: string
    readonly gone_at: string | null
  }
  /** Browsers that are signed in. Tokens are SHA-256 of what the browser holds; `version` counts changes. */
  readonly device: {
    readonly id: string
    readonly person: string
    readonly name: string
    readonly token: string
    readonly next_token: string | null
    readonly next_at: string | null
    readonly last_token: string | null
    readonly last_until: string | null
    readonly token_at: string
    readonly signed_in_at: string
    readonly seen_at: string
    readonly expires_at: string
    readonly version: number
  }
  /** Photographs, JPEG, on PostgreSQL only; SQLite has them as files beside it. `sha256` is that of the bytes. */
  readonly photo: {
    readonly id: string
    readonly size: string
    readonly bytes: Uint8Array
    readonly sha256: string
  }
  readonly settings_change: {
    readonly rank: Generated<number>
    readonly at: string
    readonly content: string
  }
}
