import { type KeyboardEvent, memo } from 'react'
import { Link, useLocation } from 'wouter'
import type { StoredPlace } from '../../../db/contract/storage-operations.ts'
import type { Format } from '../../shared/format/format.ts'
import { useFormat } from '../../shared/format/use-format.ts'
import { StateWords } from './state-words.tsx'
import { placeAddress } from './storage-address.ts'

interface PlaceRowsProps {
  readonly places: readonly StoredPlace[]
  readonly current: number | null
  /** Enter: the card that is shown takes the focus. */
  readonly onOpen: () => void
}

/** Places as they stand one in another: arrows go through them, Enter goes to the card. */
export function PlaceRows({ places, current, onOpen }: PlaceRowsProps) {
  const [, go] = useLocation()
  const format = useFormat()
  const onKeyDown = (event: KeyboardEvent<HTMLUListElement>) => {
    const links = [...event.currentTarget.querySelectorAll<HTMLElement>('a')]
    const at = links.indexOf(event.target as HTMLElement)
    const here = places[at]
    if (here === undefined) return
    if (event.key === 'Enter' && here.placeId === current) {
      event.preventDefault()
      onOpen()
    }
    const by = { ArrowDown: 1, ArrowUp: -1 }[event.key]
    const next = by === undefined ? undefined : places[at + by]
    if (by === undefined || next === undefined) return
    event.preventDefault()
    links[at + by]?.focus()
    go(placeAddress(next.placeId), { replace: true })
  }
  return (
    <ul className="pane-rows" aria-label="Storage places" onKeyDown={onKeyDown}>
      {places.map((place) => (
        <PlaceRow key={place.placeId} place={place} isCurrent={place.placeId === current} format={format} />
      ))}
    </ul>
  )
}

interface PlaceRowProps {
  readonly place: StoredPlace
  readonly isCurrent: boolean
  readonly format: Format
}

/** One row, drawn anew only when it changed: there may be hundreds, and each step through them draws two. */
const PlaceRow = memo(function PlaceRow({ place, isCurrent, format }: PlaceRowProps) {
  return (
    <li>
      <Link
        href={placeAddress(place.placeId)}
        className="pane-row store-row"
        style={{ paddingLeft: `${20 + 16 * (place.path.split(' / ').length - 1)}px` }}
        {...(isCurrent ? { 'aria-current': 'true' as const } : {})}
      >
        <span className="pane-row-name">{place.name}</span>
        <span className="store-row-lots">
          {place.lots === 0 ? 'no lots' : `${place.lots} ${place.lots === 1 ? 'lot' : 'lots'}`}
        </span>
        <StateWords place={place} format={format} />
      </Link>
    </li>
  )
})
