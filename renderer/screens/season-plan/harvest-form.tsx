import { Link } from 'wouter'
import type { GrowOutLine } from '../../../db/contract/grow-out-operations.ts'
import { CardForm } from '../../shared/card-form/card-form.tsx'
import { DayField } from '../../shared/card-form/day-field.tsx'
import { useCardForm } from '../../shared/card-form/use-card-form.ts'
import { wholeNumber } from '../../shared/card-form/whole-number.ts'
import { AmountField } from '../../shared/table-form/amount-field.tsx'
import { TextField } from '../../shared/table-form/fields.tsx'

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
  const plantsField = form.field('plants', 'plantsGrown')
  const send = () =>
    form.send({
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
    })
  return (
    <CardForm
      title={`Take seed of ${growOut.variety} back`}
      sendWord="Take it back"
      {...form.frame}
      busy={form.frame.busy || unread}
      onSend={send}
      onChoose={form.choice('amount').onChange}
    >
      <AmountField label="Amount" {...form.field('amount')} lotId={parent.lotId} sample={typed.sample} />
      <TextField
        label="Counted sample"
        size="record"
        {...form.field('sample')}
        placeholder="25 weigh 6.10 g"
      />
      <TextField
        label="Plants that seed was saved from"
        size="record"
        {...plantsField}
        hint={growOut.plantsSavedFrom === null ? 'empty where nobody counted' : 'as noted'}
        problem={unread ? 'Type a whole number, or leave it empty.' : plantsField.problem}
      />
      <TextField label="Harvest" size="record" {...form.field('harvest')} value={harvest} />
      <TextField
        label="Note"
        size="record"
        {...form.field('note')}
        hint={`${growOut.grower} brings it, from ${growOut.site}, grown from ${growOut.out.map(({ lotNumber }) => lotNumber).join(' and ')}`}
      />
      <DayField {...form.day('on', 'receivedOn')} />
    </CardForm>
  )
}
