/** One cell of a table that is written to a file: words, a number, an amount of money in minor units, or nothing. */
export type Cell = string | number | { readonly minor: number } | null
