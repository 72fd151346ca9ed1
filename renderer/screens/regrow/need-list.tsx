import type { KeyboardEvent } from 'react'
import { Link, useLocation } from 'wouter'
import type { NeedLine } from '../../../db/contract/regrow-operations.ts'
import { SeedBar } from '../../shared/seed-bar/seed-bar.tsx'
import { StateMark } from '../../shared/state-mark/state-mark.tsx'
import type { Chosen } from './chosen.ts'
import { needAddress } from './regrow-address.ts'

interface NeedListProps {
  readonly needs: readonly NeedLine[]
  readonly current: number | null
  readonly chosen: Chosen
  /** Enter or a click: the card opens and takes the focus. */
  readonly onOpen: (accessionId: number) => void
}

/** Needs, the most urgent first: arrows go through them, the space bar ticks one to be grown, Enter opens its card. */
export function NeedList({ needs, current, chosen, onOpen }: NeedListProps) {
  const [, go] = useLocation()
  const onKeyDown = (event: KeyboardEvent<HTMLOListElement>) => {
    if (!(event.target instanceof HTMLAnchorElement)) return
    const links = [...event.currentTarget.querySelectorAll<HTMLElement>('a')]
    const at = links.indexOf(event.target)
    const here = needs[at]
    if (here === undefined) return
    if (event.key === 'Enter') {
      // The same key press must not act on the card that takes the focus.
      event.preventDefault()
      event.target.click()
    }
    if (event.key === ' ') {
      event.preventDefault()
      chosen.toggle(here.accessionId)
    }
    const by = { ArrowDown: 1, ArrowUp: -1 }[event.key]
    const next = by === undefined ? undefined : needs[at + by]
    if (by === undefined || next === undefined) return
    event.preventDefault()
    links[at + by]?.focus()
    go(needAddress(next.accessionId), { replace: true })
  }
  return (
    <>
      <p className="soft regrow-keys">
        <kbd>↓</kbd> goes on · <kbd>Space</kbd> ticks to grow it · <kbd>Enter</kbd> opens why
      </p>
      <ol className="pane-rows" onKeyDown={onKeyDown}>
        {needs.map((need) => (
          <li key={need.accessionId} className="need-row">
            <input
              type="checkbox"
              tabIndex={-1}
              aria-label={`Grow ${need.variety} this season`}
              checked={chosen.chosen.includes(need.accessionId)}
              onChange={() => chosen.toggle(need.accessionId)}
            />
            <Link
              href={needAddress(need.accessionId)}
              className="need-link"
              {...(need.accessionId === current ? { 'aria-current': 'true' as const } : {})}
              onClick={() => onOpen(need.accessionId)}
            >
              <span className="need-rank">{need.rank}</span>
              <span className="need-name">{need.variety}</span>
              <span className="need-crop">
                {need.crop} · {need.accessionNumber}
              </span>
              <StateMark mark={need.state} />
              <span className="need-bar">
                <SeedBar {...barOf(need)} />
              </span>
              <span className="need-cost">
                {chosen.chosen.includes(need.accessionId) && <strong>to grow · </strong>}
                {need.growOut !== null && (
                  <strong>{need.growOut.failed ? 'its growing failed · ' : 'being grown · '}</strong>
                )}
                lost by waiting: {need.costInWords}
              </span>
            </Link>
          </li>
        ))}
      </ol>
    </>
  )
}

/** What the seed bar of a need draws. */
export function barOf({ stock }: Pick<NeedLine, 'stock'>) {
  const { living, total, keep, low, high, sentence } = stock
  return { living, total, keep, low, high, sentence }
}
