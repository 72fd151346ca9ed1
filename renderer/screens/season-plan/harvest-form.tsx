import { Link } from 'wouter'
import type { GrowOutLine } from '../../../db/contract/grow-out-operations.ts'
import { CardForm, problemAt } from '../../shared/card-form/card-form.tsx'
import { DayField } from '../../shared/card-form/day-field.tsx'
import { useKeptForm } from '../../shared/card-form/use-kept-form.ts'
import { useToday } from '../../shared/card-form/use-today.ts'
import { wholeNumber } from '../../shared/card-form/whole-number.ts'
import { useWrite } from '../../shared/client/use-write.ts'
import { AmountField } from '../../shared/table-form/amount-field.tsx'
import { TextField } from '../../shared/table-form/text-field.tsx'

interface HarvestFormProps {
  readonly growOut: GrowOutLine
  readonly onClose: () => void
}

/** The harvest of a grow-out as a new lot: its parents, plants, garden and generation are known already. */
export function HarvestForm({ growOut, onClose }: HarvestFormProps) {
  const today = useToday()
  const { typed, change, letGo } = useKeptForm(`harvest/${growOut.growOutId}`, {
    amount: '',
    sample: '',
    plants: growOut.plantsSavedFrom === null ? '' : String(growOut.plantsSavedFrom),
    harvest: '',
    note: '',
    on: '',
  })
  const write = useWrite('return.record')
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
  // Seed that comes before the year it was expected in is of this year.
  const harvest = typed.harvest || String(Math.min(growOut.harvestSeason, Number(today.slice(0, 4))))
  const plants = wholeNumber(typed.plants)
  const unread = typed.plants.trim() !== '' && (plants === null || plants < 1)
  const send = () =>
    write.mutate(
      {
        person: { personId: growerId },
        parentLotId: parent.lotId,
        growOutId: growOut.growOutId,
        withdrawalId: parent.withdrawalId,
        receivedOn: typed.on || today,
        harvest,
        amount: typed.amount,
        sample: typed.sample,
        plantsGrown: plants,
        grownAt: growOut.site,
        note: typed.note,
      },
      {
        onSuccess: () => {
          letGo()
          onClose()
        },
      },
    )
  return (
    <CardForm
      title={`Take seed of ${growOut.variety} back`}
      sendWord="Take it back"
      busy={write.isPending || today === '' || unread}
      error={write.error}
      shownAtField={['amount', 'sample', 'harvest', 'plantsGrown', 'receivedOn']}
      onSend={send}
      onClose={onClose}
      onChoose={(amount) => change({ amount })}
    >
      <AmountField
        label="Amount"
        value={typed.amount}
        onChange={(amount) => change({ amount })}
        lotId={parent.lotId}
        sample={typed.sample}
        problem={problemAt(write.error, 'amount')}
      />
      <TextField
        label="Counted sample"
        step="sample"
        size="record"
        value={typed.sample}
        onChange={(sample) => change({ sample })}
        placeholder="25 weigh 6.10 g"
        problem={problemAt(write.error, 'sample')}
      />
      <TextField
        label="Plants that seed was saved from"
        step="plants"
        size="record"
        value={typed.plants}
        onChange={(typedPlants) => change({ plants: typedPlants })}
        hint={growOut.plantsSavedFrom === null ? 'empty where nobody counted' : 'as noted'}
        problem={unread ? 'Type a whole number, or leave it empty.' : problemAt(write.error, 'plantsGrown')}
      />
      <TextField
        label="Harvest"
        step="harvest"
        size="record"
        value={harvest}
        onChange={(typedHarvest) => change({ harvest: typedHarvest })}
        problem={problemAt(write.error, 'harvest')}
      />
      <TextField
        label="Note"
        step="note"
        size="record"
        value={typed.note}
        onChange={(note) => change({ note })}
        hint={`${growOut.grower} brings it, from ${growOut.site}, grown from ${growOut.out.map(({ lotNumber }) => lotNumber).join(' and ')}`}
      />
      <DayField
        value={typed.on || today}
        onChange={(on) => change({ on })}
        problem={problemAt(write.error, 'receivedOn')}
      />
    </CardForm>
  )
}
