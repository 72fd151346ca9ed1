import { Link } from 'wouter'
import type { GrowOutLine } from '../../../db/contract/regeneration-operations.ts'
import { CardForm } from '../../shared/card-form/card-form.tsx'
import { DayField } from '../../shared/card-form/day-field.tsx'
import { useCardForm } from '../../shared/card-form/use-card-form.ts'
import { wholeNumber } from '../../shared/card-form/whole-number.ts'
import { AmountField } from '../../shared/table-form/amount-field.tsx'
import { NOTE_WORDS } from './grow-out-words.ts'

interface HarvestFormProps {
  readonly growOut: GrowOutLine
  readonly onClose: () => void
}

/** The harvest of a grow-out as a new lot: its parents, plants, garden and generation are known already. */
export function HarvestForm({ growOut, onClose }: HarvestFormProps) {
  const form = useCardForm({
    draftName: `harvest/${growOut.growOutId}`,
    empty: {
      amount: '',
      sample: '',
      plants: growOut.plantsSavedFrom === null ? '' : String(growOut.plantsSavedFrom),
      harvest: '',
      note: '',
      on: '',
    },
    writes: 'return.record',
    onClose,
  })
  const { typed } = form
  const parent = growOut.out[0]
  const { growerId } = growOut
  if (parent === undefined || growerId === null) {
    return (
      <p>
        {growerId === null ? 'Nobody is named as its grower' : 'No seed went out for it here'}, so{' '}
        <Link href="/take-back">take it back at the table</Link>, where both can be typed.
      </p>
    )
  }
  // Seed that comes before the year it was expected in is of the year in which it comes.
  const yearItComes = Number(form.dayOf('on').slice(0, 4))
  const harvest = typed.harvest || String(Math.min(growOut.harvestSeason, yearItComes))
  const plants = wholeNumber(typed.plants)
  const unread = typed.plants.trim() !== '' && (plants === null || plants < 1)
  const input = {
    person: { personId: growerId },
    parentLotId: parent.lotId,
    growOutId: growOut.growOutId,
    withdrawalId: parent.withdrawalId,
    receivedOn: form.dayOf('on'),
    harvest,
    amount: typed.amount,
    sample: typed.sample,
    plantsGrown: plants,
    grownAt: growOut.site,
    note: typed.note,
  }
  return (
    <CardForm
      title={`Take seed of ${growOut.variety} back`}
      sendWord="Take it back"
      {...form.sending(unread ? null : input)}
      onChoose={form.choice('amount').onChange}
    >
      <AmountField label="Amount" {...form.field('amount')} lotId={parent.lotId} sample={typed.sample} />
      {form.textField('sample', 'Counted sample', { placeholder: '25 weigh 6.10 g' })}
      {form.textField('plants', 'Plants that seed was saved from', {
        path: 'plantsGrown',
        hint: growOut.plantsSavedFrom === null ? 'empty where nobody counted' : 'as noted',
        problem: unread ? 'Type a whole number, or leave it empty.' : undefined,
      })}
      {form.textField('harvest', 'Harvest', { value: harvest })}
      {form.textField('note', 'Note', {
        hint: `${growOut.grower} brings it, from ${growOut.site}, grown from ${growOut.out.map(({ lotNumber }) => lotNumber).join(' and ')}`,
      })}
      <DayField {...form.day('on', 'receivedOn')} />
    </CardForm>
  )
}

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
