import type { StoredPlace } from '../../../db/contract/storage-operations.ts'
import { CardForm } from '../../shared/card-form/card-form.tsx'
import { useCardForm } from '../../shared/card-form/use-card-form.ts'
import { PLACE_KINDS, type PlaceKind } from '../../shared/format/place-kinds.ts'
import { SelectField, TextField } from '../../shared/table-form/fields.tsx'

interface NewPlaceProps {
  readonly places: readonly StoredPlace[]
  readonly onMade: (placeId: number) => void
  readonly onClose: () => void
}

const EMPTY = { name: '', kind: 'room' as PlaceKind, parent: '' }

/** A place to keep seed in, or one that is only measured for now to see whether it would do. */
export function NewPlace({ places, onMade, onClose }: NewPlaceProps) {
  const form = useCardForm({ draftName: 'new-place', empty: EMPTY, writes: 'place.create', onClose })
  const { name, kind, parent } = form.typed
  return (
    <CardForm
      title="A new place"
      level={2}
      sendWord="Add it"
      {...form.frame}
      busy={form.frame.busy || name.trim() === ''}
      onSend={() =>
        form.send({ name, kind, parentId: parent === '' ? null : Number(parent) }, ({ placeId }) =>
          onMade(placeId),
        )
      }
    >
      <TextField label="Its name" size="record" {...form.field('name')} />
      <SelectField label="What it is" size="record" options={PLACE_KINDS} {...form.choice('kind')} />
      {places.length > 0 && (
        <SelectField
          label="Inside"
          size="record"
          options={[
            { value: '', label: 'by itself' },
            ...places.map(({ placeId, path }) => ({ value: String(placeId), label: path })),
          ]}
          {...form.choice('parent')}
        />
      )}
      <p className="card-form-wide soft">
        It need not hold seed yet: read a few candidates for some weeks and compare them before you choose.
      </p>
    </CardForm>
  )
}
