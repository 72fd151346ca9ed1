import type { StoredPlace } from '../../../db/contract/storage-operations.ts'
import type { Format } from '../../shared/format/format.ts'
import type { PaneRow } from '../../shared/panes/pane-rows.tsx'
import { StateWords } from './state-words.tsx'
import { placeAddress } from './storage-address.ts'

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
