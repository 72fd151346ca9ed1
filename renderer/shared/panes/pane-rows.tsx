import { type CSSProperties, type KeyboardEvent, memo, type ReactNode } from 'react'
import { Link, useLocation } from 'wouter'

/** One row of a list: the address of its card and what the row shows. */
export interface PaneRow {
  readonly address: string
  readonly content: ReactNode
  /** A box to tick, before the link. */
  readonly before?: ReactNode
  readonly style?: CSSProperties
}

interface PaneRowsProps {
  readonly label: string
  readonly rows: readonly PaneRow[]
  /** The class of each link, where its columns are its own. */
  readonly rowClass?: string
  /** Whether the order says something. */
  readonly ranked?: boolean
  /** Enter or a click: the card of a row opens and takes the focus. */
  readonly onOpen: (address: string) => void
  readonly onSpace?: (address: string) => void
}

/**
 * The list of two panes: arrows go through its rows and show the card of each, Enter goes to the card. The keyboard
 * passes through it in one step, by the row that is shown.
 */
export function PaneRows({ label, rows, rowClass = '', ranked = false, onOpen, onSpace }: PaneRowsProps) {
  const [here, go] = useLocation()
  const onKeyDown = (event: KeyboardEvent<HTMLElement>) => {
    if (!(event.target instanceof HTMLAnchorElement)) return
    const links = [...event.currentTarget.querySelectorAll<HTMLAnchorElement>('.pane-row')]
    const at = links.indexOf(event.target)
    const row = rows[at]
    if (row === undefined) return
    if (event.key === 'Enter') {
      // The same key press must not act on the card that takes the focus.
      event.preventDefault()
      return event.target.click()
    }
    if (event.key === ' ' && onSpace !== undefined) {
      event.preventDefault()
      return onSpace(row.address)
    }
    const by = { ArrowDown: 1, ArrowUp: -1 }[event.key]
    const next = by === undefined ? undefined : rows[at + by]
    if (by === undefined || next === undefined) return
    event.preventDefault()
    links[at + by]?.focus()
    go(next.address, { replace: true })
  }
  const List = ranked ? 'ol' : 'ul'
  const shown = Math.max(
    0,
    rows.findIndex(({ address }) => address === here),
  )
  return (
    <List className="pane-rows" aria-label={label} onKeyDown={onKeyDown}>
      {rows.map((row, index) => (
        <OneRow
          key={row.address}
          row={row}
          isHere={row.address === here}
          isStop={index === shown}
          rowClass={rowClass}
          onOpen={onOpen}
        />
      ))}
    </List>
  )
}

interface OneRowProps extends Pick<PaneRowsProps, 'onOpen'> {
  readonly row: PaneRow
  readonly isHere: boolean
  readonly isStop: boolean
  readonly rowClass: string
}

/** One row, drawn anew only where it changed. */
const OneRow = memo(function OneRow({ row, isHere, isStop, rowClass, onOpen }: OneRowProps) {
  const { address, content, before, style } = row
  return (
    <li className={before === undefined ? undefined : 'pane-row-beside'}>
      {before}
      <Link
        href={address}
        className={`pane-row choice ${rowClass}`}
        style={style}
        tabIndex={isStop ? 0 : -1}
        {...(isHere ? { 'aria-current': 'true' as const } : {})}
        onClick={() => onOpen(address)}
      >
        {content}
      </Link>
    </li>
  )
})
