import { sql } from 'kysely'

/**
 * The sums of the books by month, kept up by a trigger. It runs as the transaction ends, for all writers add to the same few rows: each
 * then holds them for the moment of its end only, one after the other, and no two wait for each other. Minutes are kept in thousandths,
 * so that what is added and taken away again leaves nothing behind.
 */
export const bookMonthSteps = [
  sql`
    create function book_month_add(
      of_bench text, of_kind text, of_month text, of_currency text, of_account text, more_lines bigint, more_minor bigint, more_milliminutes bigint
    ) returns void language plpgsql as $$
    begin
      insert into book_month (bench, month_kind, month, currency, account, lines, minor, milliminutes)
        values (of_bench, of_kind, of_month, of_currency, of_account, more_lines, more_minor, more_milliminutes)
        on conflict (bench, month_kind, month, currency, account) do update set
          lines = book_month.lines + excluded.lines,
          minor = book_month.minor + excluded.minor,
          milliminutes = book_month.milliminutes + excluded.milliminutes;
      if more_lines < 0 then
        delete from book_month where bench = of_bench and month_kind = of_kind and month = of_month
          and currency = of_currency and account = of_account and lines = 0;
      end if;
    end $$`,
  sql`
    create function book_line_counted() returns trigger language plpgsql as $$
    declare
      line book_line;
      sign integer := case when tg_op = 'DELETE' then -1 else 1 end;
    begin
      if tg_op = 'DELETE' then line := old; else line := new; end if;
      perform pg_advisory_xact_lock(hashtextextended('book_month ' || line.bench, 0));
      perform book_month_add(line.bench, 'calendar', line.month, line.currency, line.account,
        sign, sign * line.minor, sign * round(1000 * line.minutes::numeric)::bigint);
      perform book_month_add(line.bench, 'from-6th', line.month_from_6th, line.currency, line.account,
        sign, sign * line.minor, sign * round(1000 * line.minutes::numeric)::bigint);
      return null;
    end $$`,
  sql`
    create constraint trigger book_line_counted after insert or delete on book_line
      deferrable initially deferred for each row execute function book_line_counted()`,
]
