import type { GrowOutLine } from '../../../db/contract/grow-out-operations.ts'
import { CardForm } from '../../shared/card-form/card-form.tsx'
import { useCardForm } from '../../shared/card-form/use-card-form.ts'
import { wholeNumber } from '../../shared/card-form/whole-number.ts'
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
  const input = { growOutId, kind, on: form.dayOf('on'), plants, note: typed.note }
  return (
    <CardForm title={NOTE_WORDS[kind]} sendWord="Note it" {...form.sending(unread ? null : input)}>
      {counted !== undefined &&
        form.textField('plants', counted, {
          hint: kind === 'saved-from' ? '' : 'may stay empty',
          problem: unread ? 'Type a whole number, or leave it empty.' : undefined,
        })}
      {form.textField('note', kind === 'failed' ? 'Why' : 'Note', {
        hint: kind === 'failed' ? 'such as: slugs, hail, it crossed, never came up' : 'may stay empty',
      })}
      {form.dayField('on')}
    </CardForm>
  )
}
