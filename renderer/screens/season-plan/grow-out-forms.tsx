import { Link } from 'wouter'
import type { GrowOutLine } from '../../../db/contract/regeneration-operations.ts'
import { type MessageId, message } from '../../../db/messages/message.ts'
import { CardForm } from '../../shared/card-form/card-form.tsx'
import { DayField } from '../../shared/card-form/day-field.tsx'
import { useCardForm } from '../../shared/card-form/use-card-form.ts'
import { wholeNumber } from '../../shared/card-form/whole-number.ts'
import { useTexts } from '../../shared/format/use-texts.ts'
import { AmountField } from '../../shared/table-form/amount-field.tsx'

interface HarvestFormProps {
  readonly growOut: GrowOutLine
  readonly onClose: () => void
}

/** The harvest of a grow-out as a new lot: its parents, plants, garden and generation are known already. */
export function HarvestForm({ growOut, onClose }: HarvestFormProps) {
  const { t, pieces } = useTexts()
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
        {pieces(message(growerId === null ? 'season.no-grower' : 'season.no-seed-out'), {
          link: (words) => (
            <Link key="table" href="/take-back">
              {words}
            </Link>
          ),
        })}
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
      title={t('season.take-back-title', { variety: growOut.variety })}
      sendWord={t('season.take-it-back')}
      {...form.sending(unread ? null : input)}
      onChoose={form.choice('amount').onChange}
    >
      <AmountField
        label={t('season.amount')}
        {...form.field('amount')}
        lotId={parent.lotId}
        sample={typed.sample}
      />
      {form.textField('sample', t('season.sample'), { placeholder: '25 weigh 6.10 g' })}
      {form.textField('plants', t('season.saved-from-plants'), {
        path: 'plantsGrown',
        hint: growOut.plantsSavedFrom === null ? t('season.plants-nobody') : t('season.plants-as-noted'),
        problem: unread ? t('season.type-whole') : undefined,
      })}
      {form.textField('harvest', t('season.harvest'), { value: harvest })}
      {form.textField('note', t('season.note-field'), {
        hint: t('season.who-brings', {
          grower: growOut.grower,
          garden: growOut.site,
          lots: { list: growOut.out.map(({ lotNumber }) => lotNumber) },
        }),
      })}
      <DayField {...form.day('on', 'receivedOn')} />
    </CardForm>
  )
}

type Kind = GrowOutLine['next'][number]

/** What is counted at each step; nothing where nothing is. */
const COUNTED = {
  emerged: 'season.came-up-plants',
  'roots-stored': 'season.roots-stored-field',
  'planted-out': 'season.roots-planted-field',
  'saved-from': 'season.saved-from-plants',
} as const satisfies Partial<Record<Kind, MessageId>>

interface NoteFormProps {
  readonly growOut: GrowOutLine
  readonly kind: Kind
  readonly onClose: () => void
}

/** One note of the season, with its day; of a failure, why. */
export function NoteForm({ growOut, kind, onClose }: NoteFormProps) {
  const { growOutId } = growOut
  const { t } = useTexts()
  const form = useCardForm({
    draftName: `grow-out/${growOutId}/${kind}`,
    empty: { plants: '', note: '', on: '' },
    writes: 'grow-out.record',
    onClose,
  })
  const { typed } = form
  const counted = kind in COUNTED ? COUNTED[kind as keyof typeof COUNTED] : undefined
  const plants = wholeNumber(typed.plants)
  const unread = typed.plants.trim() !== '' && (plants === null || plants < 1)
  const input = { growOutId, kind, on: form.dayOf('on'), plants, note: typed.note }
  return (
    <CardForm
      title={t(`season.do.${kind}`)}
      sendWord={t('season.note-it')}
      {...form.sending(unread ? null : input)}
    >
      {counted !== undefined &&
        form.textField('plants', t(counted), {
          hint: kind === 'saved-from' ? '' : t('season.may-stay-empty'),
          problem: unread ? t('season.type-whole') : undefined,
        })}
      {form.textField('note', kind === 'failed' ? t('season.why-failed') : t('season.note-field'), {
        hint: kind === 'failed' ? t('season.why-failed-hint') : t('season.may-stay-empty'),
      })}
      {form.dayField('on')}
    </CardForm>
  )
}
