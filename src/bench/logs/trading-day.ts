import { z } from 'zod'

/** A day on which money can have changed hands here: written as 2026-03-31, of the years 1900 to 2999, so that sums by tax year can be made. */
export const tradingDay = z.iso
  .date('a day is written as 2026-03-31')
  .refine((day) => day >= '1900-01-01' && day <= '2999-12-31', 'a day is of the years 1900 to 2999')
