import { CardForm, problemAt } from '../../../shared/card-form/card-form.tsx'
import { DayField } from '../../../shared/card-form/day-field.tsx'
import { useKeptForm } from '../../../shared/card-form/use-kept-form.ts'
import { useToday } from '../../../shared/card-form/use-today.ts'
import { useWrite } from '../../../shared/client/use-write.ts'
import type { ActionFormProps } from './lot-actions.tsx'
import { PlaceField } from './place-field.tsx'

interface Typed {
  readonly placeId: number | null
  readonly on: string
}

/** Moves the lot to another place; where it stood is kept. */
export function MoveForm({ lot, keptAs, onClose }: ActionFormProps) {
  const today = useToday()
  const { typed, change, letGo } = useKeptForm<Typed>(keptAs, { placeId: lot.placeId, on: '' })
  const write = useWrite('lot.move')
  const send = () => {
    if (typed.placeId === null) return
    write.mutate(
      { lotIds: [lot.lotId], placeId: typed.placeId, on: typed.on || today },
      {
        onSuccess: () => {
          letGo()
          onClose()
        },
      },
    )
  }
  return (
    <CardForm
      title="Move"
      sendWord="Move it there"
      busy={write.isPending || typed.placeId === null}
      error={write.error}
      shownAtField={['on']}
      onSend={send}
      onClose={onClose}
    >
      <PlaceField
        label="To"
        none="choose a place"
        value={typed.placeId}
        onChange={(placeId) => change({ placeId })}
      />
      <DayField
        value={typed.on || today}
        onChange={(on) => change({ on })}
        problem={problemAt(write.error, 'on')}
      />
    </CardForm>
  )
}
