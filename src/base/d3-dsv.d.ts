/** The functions of d3-dsv in use here. */
declare module 'd3-dsv' {
  type Dsv = {
    /** Records as lists of fields. An unclosed quotation mark runs to the end of the text. */
    parseRows(text: string): string[][]
    /** Records by the names of the first row. */
    parse(text: string): Record<string, string>[] & { readonly columns: readonly string[] }
    /** One record without its line end; fields with the delimiter, a quotation mark or a line end are quoted. */
    formatRow(row: readonly string[]): string
  }
  export const dsvFormat: (delimiter: string) => Dsv
}
