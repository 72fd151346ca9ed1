import { useState } from 'react'
import { PLACE_KINDS, type PlaceKind } from '../../../../db/domain/shared/closed-sets.ts'
import { problemAt } from '../../../shared/card-form/card-form.tsx'
import { useRead } from '../../../shared/client/use-read.ts'
import { useWrite } from '../../../shared/client/use-write.ts'
import { useTexts } from '../../../shared/format/use-texts.ts'
import { ActionButton } from '../../../shared/parts/action-button.tsx'
import { ProblemText } from '../../../shared/parts/problem-text.tsx'
import { SelectField, TextField } from '../../../shared/table-form/fields.tsx'

interface PlaceFieldProps {
  readonly label: string
  /** The word for no place; without it a place must be chosen. */
  readonly none: string
  readonly value: number | null
  readonly onChange: (placeId: number | null) => void
}

const NEW = 'new'

/** A storage place from the tree, or a new one made right here. */
export function PlaceField({ label, none, value, onChange }: PlaceFieldProps) {
  const { t } = useTexts()
  const places = useRead('place.list', {}).data?.places ?? []
  const [making, setMaking] = useState(false)
  return (
    <>
      <SelectField
        label={label}
        size="record"
        value={making ? NEW : String(value ?? '')}
        options={[
          { value: '', label: none },
          ...places.map((place) => ({ value: String(place.placeId), label: place.path })),
          { value: NEW, label: t('shelf.new-place-choice') },
        ]}
        onChange={(picked) => {
          setMaking(picked === NEW)
          if (picked !== NEW) onChange(picked === '' ? null : Number(picked))
        }}
      />
      {making && (
        <NewPlace
          inside={value}
          onMade={(placeId) => {
            setMaking(false)
            onChange(placeId)
          }}
        />
      )}
    </>
  )
}

interface NewPlaceProps {
  readonly inside: number | null
  readonly onMade: (placeId: number) => void
}

function NewPlace({ inside, onMade }: NewPlaceProps) {
  const { t } = useTexts()
  const places = useRead('place.list', {}).data?.places ?? []
  const create = useWrite('place.create')
  const [name, setName] = useState('')
  const [kind, setKind] = useState<PlaceKind>('box')
  const [parent, setParent] = useState(String(inside ?? ''))
  const make = () =>
    create.mutate(
      { name, kind, parentId: parent === '' ? null : Number(parent) },
      { onSuccess: ({ placeId }) => onMade(placeId) },
    )
  return (
    <fieldset
      className="stack-2 boxed card-form-wide"
      onKeyDown={(event) => {
        if (event.key !== 'Enter' || event.target instanceof HTMLButtonElement) return
        event.preventDefault()
        make()
      }}
    >
      <legend>{t('shelf.new-place')}</legend>
      <TextField
        label={t('shelf.place-name')}
        step="place-name"
        size="record"
        value={name}
        onChange={setName}
        problem={problemAt(create.error, 'name')}
      />
      <SelectField
        label={t('shelf.place-kind')}
        size="record"
        value={kind}
        options={PLACE_KINDS.map((value) => ({ value, label: t(`storage.kind-${value}`) }))}
        onChange={setKind}
      />
      <SelectField
        label={t('shelf.place-inside')}
        size="record"
        value={parent}
        options={[
          { value: '', label: t('shelf.place-by-itself') },
          ...places.map((place) => ({ value: String(place.placeId), label: place.path })),
        ]}
        onChange={setParent}
      />
      {create.error !== null && create.error.problem.field !== 'name' && (
        <ProblemText problem={create.error.problem} />
      )}
      <ActionButton className="quiet-button" off={create.isPending} onClick={make}>
        {t('shelf.make-place')}
      </ActionButton>
    </fieldset>
  )
}
