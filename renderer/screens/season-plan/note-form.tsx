import type { GrowOutLine } from '../../../db/contract/grow-out-operations.ts'
import { CardForm } from '../../shared/card-form/card-form.tsx'
import { DayField } from '../../shared/card-form/day-field.tsx'
import { useCardForm } from '../../shared/card-form/use-card-form.ts'
import { wholeNumber } from '../../shared/card-form/whole-number.ts'
import { TextField } from '../../shared/table-form/fields.tsx'
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
  const { growOutId } = growOut
  const form = useCardForm({
    draftName: `grow-out/${growOutId}/${kind}`,
    empty: { plants: '', note: '', on: '' },
    writes: 'grow-out.record',
    onClose,
  })
  const { typed } = form
  const counted = COUNTED[kind]
  const plants = wholeNumber(typed.plants)
  const unread = typed.plants.trim() !== '' && (plants === null || plants < 1)
  const plantsField = form.field('plants')
  return (
    <CardForm
      title={NOTE_WORDS[kind]}
      sendWord="Note it"
      {...form.frame}
      busy={form.frame.busy || unread}
      onSend={() => form.send({ growOutId, kind, on: form.dayOf('on'), plants, note: typed.note })}
    >
      {counted !== undefined && (
        <TextField
          label={counted}
          size="record"
          {...plantsField}
          hint={kind === 'saved-from' ? '' : 'may stay empty'}
          problem={unread ? 'Type a whole number, or leave it empty.' : plantsField.problem}
        />
      )}
      <TextField
        label={kind === 'failed' ? 'Why' : 'Note'}
        size="record"
        {...form.field('note')}
        hint={kind === 'failed' ? 'such as: slugs, hail, it crossed, never came up' : 'may stay empty'}
      />
      <DayField {...form.day('on')} />
    </CardForm>
  )
}
