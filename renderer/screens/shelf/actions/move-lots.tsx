import { CardForm, problemAt } from '../../../shared/card-form/card-form.tsx'
import { DayField } from '../../../shared/card-form/day-field.tsx'
import { useKeptForm } from '../../../shared/card-form/use-kept-form.ts'
import { useToday } from '../../../shared/card-form/use-today.ts'
import { useRead } from '../../../shared/client/use-read.ts'
import { useWrite } from '../../../shared/client/use-write.ts'
import { PlaceField } from './place-field.tsx'

const MOST_CAUTIONS = 5

interface Typed {
  readonly placeId: number | null
  readonly on: string
}

interface MoveLotsProps {
  readonly lotIds: readonly number[]
  /** Where they stand now, as far as that is one place. */
  readonly from: number | null
  readonly keptAs: string
  readonly onClose: () => void
}

/** Moves lots to another place; where they stood is kept. */
export function MoveLots({ lotIds, from, keptAs, onClose }: MoveLotsProps) {
  const today = useToday()
  const { typed, change, letGo } = useKeptForm<Typed>(keptAs, { placeId: from, on: '' })
  const write = useWrite('lot.move')
  const foreseen = useRead(
    'lot.foresee-move',
    typed.placeId === null || typed.placeId === from ? null : { lotIds: [...lotIds], placeId: typed.placeId },
  )
  const cautions = foreseen.data?.cautions ?? []
  const send = () => {
    if (typed.placeId === null) return
    write.mutate(
      { lotIds: [...lotIds], placeId: typed.placeId, on: typed.on || today },
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
      sendWord={lotIds.length === 1 ? 'Move it there' : `Move ${lotIds.length} lots there`}
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
