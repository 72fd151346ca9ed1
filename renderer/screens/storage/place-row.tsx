import type { StoredPlace } from '../../../db/contract/storage-operations.ts'
import type { Texts } from '../../../db/messages/texts.ts'
import { useTexts } from '../../shared/format/use-texts.ts'
import type { PaneRow } from '../../shared/panes/pane-rows.tsx'

/** A place in the list, as far in as it stands in others. */
export function placeRow(place: StoredPlace, t: Texts['text']): PaneRow {
  const inside = place.path.split(' / ').length - 1
  return {
    address: placeAddress(place.placeId),
    style: { paddingInlineStart: `${20 + 16 * inside}px` },
    content: (
      <>
        <span className="strong">{place.name}</span>
        <span className="soft number">{t('storage.lots', { lots: place.lots })}</span>
        <StateWords place={place} />
      </>
    ),
  }
}

const WELL = new Set<StoredPlace['state']>(['good'])
const ILL = new Set<StoredPlace['state']>(['too-warm', 'too-damp', 'too-warm-and-damp'])

interface StateWordsProps {
  readonly place: StoredPlace
}

/** How a place stands, in words with an outline: whole where all is well, doubled where it is not, broken where nobody knows. */
export function StateWords({ place }: StateWordsProps) {
  const { t } = useTexts()
  const kind = WELL.has(place.state) ? 'well' : ILL.has(place.state) ? 'ill' : 'unknown'
  const { stateWords: state, readingsFrom } = place
  return (
    <span className="store-state" data-kind={kind}>
      {readingsFrom === null || readingsFrom.placeId === place.placeId
        ? state
        : t('storage.state-by', { state, place: readingsFrom.path.split(' / ').at(-1) ?? '' })}
    </span>
  )
}

/** Where places are compared. */
export const COMPARE = '/storage/compare'

/** Where a place is added. */
export const NEW_PLACE = '/storage/new'

/** Where safety duplicates held by others are looked over. */
export const ELSEWHERE = '/storage/elsewhere'

/** Where a round is walked. */
export const ROUND = '/storage/round'

/** Where the round sheet is printed. */
export const ROUND_SHEET = '/storage/round-sheet'

/** The address of a place's card. */
export function placeAddress(placeId: number): string {
  return `/storage/place/${placeId}`
}
