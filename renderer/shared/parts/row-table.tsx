import type { ReactNode } from 'react'

/** A column: what stands above it, what stands in the cell of a row, and the class of both, such as 'number'. */
type Column<R> = readonly [head: ReactNode, cell: (row: R) => ReactNode, className?: string]

interface RowTableProps<R> {
  /** Names it where no caption does. */
  readonly label?: string
  readonly caption?: ReactNode
  /** Beside that of every plain table. */
  readonly className?: string
  readonly columns: readonly Column<R>[]
  readonly rows: readonly R[]
  readonly keyOf: (row: R) => string | number
  /** Whether the first cell of a row is its heading. */
  readonly rowHeads?: boolean
  readonly rowProps?: (row: R) => Readonly<Record<`data-${string}`, boolean | undefined>>
}

/** A table with a row for each of some things. */
export function RowTable<R>(props: RowTableProps<R>) {
  const { label, caption, className = '', columns, rows, keyOf, rowHeads = false, rowProps } = props
  return (
    <table className={`plain-table ${className}`} aria-label={label}>
      {caption}
      <thead>
        <tr>
          {columns.map(([head, , of], index) => {
            const Head = head === '' ? 'td' : 'th'
            return (
              // biome-ignore lint/suspicious/noArrayIndexKey: a column has no name but its place
              <Head key={index} scope={head === '' ? undefined : 'col'} className={of}>
                {head}
              </Head>
            )
          })}
        </tr>
      </thead>
      <tbody>
        {rows.map((row) => (
          <tr key={keyOf(row)} {...rowProps?.(row)}>
            {columns.map(([, cell, of], index) => {
              const Cell = rowHeads && index === 0 ? 'th' : 'td'
              return (
                // biome-ignore lint/suspicious/noArrayIndexKey: a column has no name but its place
                <Cell key={index} className={of} scope={Cell === 'th' ? 'row' : undefined}>
                  {cell(row)}
                </Cell>
              )
            })}
          </tr>
        ))}
      </tbody>
    </table>
  )
}
