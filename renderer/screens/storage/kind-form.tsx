import { useState } from 'react'
import type { StoredPlace } from '../../../db/contract/storage-operations.ts'
import { CardForm } from '../../shared/card-form/card-form.tsx'
import { useRead } from '../../shared/client/use-read.ts'
import { useWrite } from '../../shared/client/use-write.ts'
import { PLACE_KINDS } from '../../shared/format/place-kinds.ts'
import { SelectField } from '../../shared/table-form/fields.tsx'

interface KindFormProps {
  readonly place: StoredPlace
  readonly onClose: () => void
}

/** Says that a place is another kind of place; what that does to its seed is said before. */
export function KindForm({ place, onClose }: KindFormProps) {
  const [kind, setKind] = useState(place.kind)
  const { placeId } = place
  const previewed = useRead('place.preview-kind', kind === place.kind ? null : { placeId, kind })
  const write = useWrite('place.change-kind')
  return (
    <CardForm
      title="What kind of place it is"
      sendWord="Change it"
      busy={write.isPending || kind === place.kind}
      error={write.error}
      onSend={() => write.mutate({ placeId, kind }, { onSuccess: onClose })}
      onClose={onClose}
    >
      <SelectField label="It is" size="record" value={kind} options={PLACE_KINDS} onChange={setKind} />
      <p className="card-form-wide" role="status">
        {previewed.data?.words ?? ''}
      </p>
    </CardForm>
  )
}
