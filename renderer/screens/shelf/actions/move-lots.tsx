import { CardForm } from '../../../shared/card-form/card-form.tsx'
import { DayField } from '../../../shared/card-form/day-field.tsx'
import { useCardForm } from '../../../shared/card-form/use-card-form.ts'
import { useRead } from '../../../shared/client/use-read.ts'
import { PlaceField } from './place-field.tsx'

const MOST_CAUTIONS = 5

interface MoveLotsProps {
  readonly lotIds: readonly number[]
  /** Where they stand now, as far as that is one place. */
  readonly from: number | null
  readonly draftName: string
  readonly onClose: () => void
}

/** Moves lots to another place; where they stood is kept. */
export function MoveLots({ lotIds, from, draftName, onClose }: MoveLotsProps) {
  const form = useCardForm({ draftName, empty: { placeId: from, on: '' }, writes: 'lot.move', onClose })
  const { placeId } = form.typed
  const previewed = useRead(
    'lot.preview-move',
    placeId === null || placeId === from ? null : { lotIds: [...lotIds], placeId },
  )
  const cautions = previewed.data?.cautions ?? []
  const send = () => {
    if (placeId !== null) form.send({ lotIds: [...lotIds], placeId, on: form.dayOf('on') })
  }
  return (
    <CardForm
      title="Move"
      sendWord={lotIds.length === 1 ? 'Move it there' : `Move ${lotIds.length} lots there`}
      {...form.frame}
      busy={form.frame.busy || placeId === null}
      onSend={send}
    >
      <PlaceField label="To" none="choose a place" {...form.choice('placeId')} />
      <DayField {...form.day('on')} />
      <div className="card-form-wide" role="status">
        {cautions.slice(0, MOST_CAUTIONS).map(({ lotId, lotNumber, sentence }) => (
          <p key={lotId} className="card-cautions">
            {lotNumber}: {sentence}
          </p>
        ))}
        {cautions.length > MOST_CAUTIONS && <p>and {cautions.length - MOST_CAUTIONS} lots more.</p>}
      </div>
    </CardForm>
  )
}
