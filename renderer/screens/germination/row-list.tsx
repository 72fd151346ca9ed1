import type { KeyboardEvent, ReactNode } from 'react'
import { Link } from 'wouter'

export interface Row {
  readonly address: string
  readonly content: ReactNode
}

interface RowListProps {
  readonly label: string
  readonly rows: readonly Row[]
  readonly here: string
  /** An arrow led to a row: its card opens, the focus stays in the list. */
  readonly onArrow: (address: string) => void
  /** Enter or a click: its card opens and takes the focus. */
  readonly onOpen: (address: string) => void
}

/** Rows to choose from: arrows go through them, Enter goes to the card. */
export function RowList({ label, rows, here, onArrow, onOpen }: RowListProps) {
  const onKeyDown = (event: KeyboardEvent<HTMLUListElement>) => {
    if (event.key === 'Enter' && event.target instanceof HTMLAnchorElement) {
      // The same key press must not reach the field on the card that takes the focus.
      event.preventDefault()
      return event.target.click()
    }
    const by = { ArrowDown: 1, ArrowUp: -1 }[event.key]
    const links = [...event.currentTarget.querySelectorAll<HTMLElement>('a')]
    const at = by === undefined ? -1 : links.indexOf(event.target as HTMLElement) + by
    const next = rows[at]
    if (by === undefined || next === undefined) return
    event.preventDefault()
    links[at]?.focus()
    onArrow(next.address)
  }
  return (
    <ul className="pane-rows" aria-label={label} onKeyDown={onKeyDown}>
      {rows.map(({ address, content }) => (
        <li key={address}>
          <Link
            href={address}
            className="pane-row"
            {...(address === here ? { 'aria-current': 'true' as const } : {})}
            onClick={() => onOpen(address)}
          >
            {content}
          </Link>
        </li>
      ))}
    </ul>
  )
}
