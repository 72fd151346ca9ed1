import { useRead } from '../../shared/client/use-read.ts'
import { useFormat } from '../../shared/format/use-format.ts'
import { SelectField } from '../../shared/table-form/select-field.tsx'
import { TextField } from '../../shared/table-form/text-field.tsx'
import type { TakeInDraft } from './take-in-draft.ts'

interface VisitPinsProps {
  readonly draft: TakeInDraft
  readonly today: string
  readonly onChange: (change: Partial<Pick<TakeInDraft, 'placeId' | 'receivedOn'>>) => void
}

const LATER = { value: '', label: 'decided later' }

/** What holds for the whole visit: where the gifts go, and the day. The place stays for the next donor. */
export function VisitPins({ draft, today, onChange }: VisitPinsProps) {
  const format = useFormat()
  const places = useRead('place.list', {}).data?.places ?? []
  return (
    <div className="visit-pins" data-steps-apart="">
      <SelectField
        label="Goes to"
        step="place"
        size="record"
        value={draft.placeId === null ? '' : String(draft.placeId)}
        options={[LATER, ...places.map(({ placeId, path }) => ({ value: String(placeId), label: path }))]}
        onChange={(value) => onChange({ placeId: value === '' ? null : Number(value) })}
      />
      <TextField
        label="Received"
        step="received"
        type="date"
        size="record"
        words={draft.receivedOn === '' ? 'today' : format.day(draft.receivedOn)}
        value={draft.receivedOn === '' ? today : draft.receivedOn}
        onChange={(receivedOn) => onChange({ receivedOn: receivedOn === today ? '' : receivedOn })}
      />
    </div>
  )
}
