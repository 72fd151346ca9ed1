import type { GrowOutLine } from '../../../db/contract/grow-out-operations.ts'
import { CardForm, problemAt } from '../../shared/card-form/card-form.tsx'
import { DayField } from '../../shared/card-form/day-field.tsx'
import { useKeptForm } from '../../shared/card-form/use-kept-form.ts'
import { useToday } from '../../shared/card-form/use-today.ts'
import { wholeNumber } from '../../shared/card-form/whole-number.ts'
import { useWrite } from '../../shared/client/use-write.ts'
import { TextField } from '../../shared/table-form/text-field.tsx'
import { NOTE_WORDS } from './grow-out-words.ts'

type Kind = GrowOutLine['next'][number]

/** What is counted at each step; nothing where nothing is. */
const COUNTED: Partial<Record<Kind, string>> = {
  emerged: 'Plants that came up',
  'roots-stored': 'Roots stored',
  'planted-out': 'Roots planted again',
  'saved-from': 'Plants that seed was saved from',
}

interface NoteFormProps {
  readonly growOut: GrowOutLine
  readonly kind: Kind
  readonly onClose: () => void
}

/** One note of the season, with its day; of a failure, why. */
export function NoteForm({ growOut, kind, onClose }: NoteFormProps) {
  const today = useToday()
  const { growOutId } = growOut
  const { typed, change, letGo } = useKeptForm(`grow-out/${growOutId}/${kind}`, {
    plants: '',
    note: '',
    on: '',
  })
  const write = useWrite('grow-out.note')
  const counted = COUNTED[kind]
  const plants = wholeNumber(typed.plants)
  const unread = typed.plants.trim() !== '' && (plants === null || plants < 1)
  const send = () =>
    write.mutate(
      { growOutId, kind, on: typed.on || today, plants, note: typed.note },
      {
        onSuccess: () => {
          letGo()
          onClose()
        },
      },
    )
  return (
    <CardForm
      title={NOTE_WORDS[kind]}
      sendWord="Note it"
      busy={write.isPending || today === '' || unread}
      error={write.error}
      shownAtField={['plants', 'note', 'on']}
      onSend={send}
      onClose={onClose}
    >
      {counted !== undefined && (
        <TextField
          label={counted}
          step="plants"
          size="record"
          value={typed.plants}
          onChange={(typedPlants) => change({ plants: typedPlants })}
          hint={kind === 'saved-from' ? '' : 'may stay empty'}
          problem={unread ? 'Type a whole number, or leave it empty.' : problemAt(write.error, 'plants')}
        />
      )}
      <TextField
        label={kind === 'failed' ? 'Why' : 'Note'}
        step="note"
        size="record"
        value={typed.note}
        onChange={(note) => change({ note })}
        hint={kind === 'failed' ? 'such as: slugs, hail, it crossed, never came up' : 'may stay empty'}
        problem={problemAt(write.error, 'note')}
      />
      <DayField
        value={typed.on || today}
        onChange={(on) => change({ on })}
        problem={problemAt(write.error, 'on')}
      />
    </CardForm>
  )
}
