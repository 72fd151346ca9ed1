import type { StoredPlace } from '../../../db/contract/storage-operations.ts'
import type { Format } from '../../shared/format/format.ts'
import type { PaneRow } from '../../shared/panes/pane-rows.tsx'

/** A place in the list, as far in as it stands in others. */
export function placeRow(place: StoredPlace, format: Format): PaneRow {
  const inside = place.path.split(' / ').length - 1
  return {
    address: placeAddress(place.placeId),
    style: { paddingLeft: `${20 + 16 * inside}px` },
    content: (
      <>
        <span className="strong">{place.name}</span>
        <span className="soft number">
          {place.lots === 0 ? 'no lots' : `${place.lots} ${place.lots === 1 ? 'lot' : 'lots'}`}
        </span>
        <StateWords place={place} format={format} />
      </>
    ),
  }
}

const WELL = new Set<StoredPlace['state']>(['good'])
const ILL = new Set<StoredPlace['state']>(['too-warm', 'too-damp', 'too-warm-and-damp'])

interface StateWordsProps {
  readonly place: StoredPlace
  readonly format: Format
}

/** How a place stands, in words with an outline: whole where all is well, doubled where it is not, broken where nobody knows. */
export function StateWords({ place, format }: StateWordsProps) {
  const kind = WELL.has(place.state) ? 'well' : ILL.has(place.state) ? 'ill' : 'unknown'
  const words =
    place.state === 'stale' && place.latest !== null
      ? `no readings since ${format.day(place.latest.slice(0, 10))}`
      : place.stateWords
  const from =
    place.readingsFrom === null || place.readingsFrom.placeId === place.placeId
      ? ''
      : `, by ${place.readingsFrom.path.split(' / ').at(-1)}`
  return (
    <span className="store-state" data-kind={kind}>
      {words}
      {from}
    </span>
  )
}

/** Where places are compared. */
export const COMPARE = '/storage/compare'

/** Where a place is added. */
export const NEW_PLACE = '/storage/new'

/** Where a round is walked. */
export const ROUND = '/storage/round'

/** Where the round sheet is printed. */
export const ROUND_SHEET = '/storage/round-sheet'

/** The address of a place's card. */
export function placeAddress(placeId: number): string {
  return `/storage/place/${placeId}`
}
