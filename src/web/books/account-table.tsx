import type { ReactNode } from 'react'

type AccountTableProps = {
  readonly caption: string
  readonly columns: readonly string[]
  readonly rows: readonly {
    readonly key: string
    /** The first stands for the row; the others are figures. */
    readonly cells: readonly [ReactNode, ...ReactNode[]]
  }[]
}

/**
 * A ruled table of figures. Where it does not fit, each row becomes a short list under its name; the roles keep it a table for
 * screen readers then.
 */
export const AccountTable = ({ caption, columns, rows }: AccountTableProps) => (
  <table className="account-table" role="table">
    <caption className="unseen">{caption}</caption>
    <thead role="rowgroup">
      <tr role="row">
        {columns.map((name) => (
          <th key={name} scope="col" role="columnheader">
            {name}
          </th>
        ))}
      </tr>
    </thead>
    <tbody role="rowgroup">
      {rows.map(({ key, cells: [first, ...figures] }) => (
        <tr key={key} role="row">
          <th scope="row" role="rowheader">
            {first}
          </th>
          {figures.map((cell, i) => (
            <td key={columns[i + 1]} role="cell">
              <span className="account-label" aria-hidden="true">
                {columns[i + 1]}
              </span>
              <span className="figure">{cell}</span>
            </td>
          ))}
        </tr>
      ))}
    </tbody>
  </table>
)
