import type { StoredPlace } from '../../../db/contract/storage-operations.ts'
import type { Format } from '../../shared/format/format.ts'

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
