import { wilsonInterval } from '../../../../db/domain/germination/wilson.ts'
import { CardForm, problemAt } from '../../../shared/card-form/card-form.tsx'
import { DayField } from '../../../shared/card-form/day-field.tsx'
import { useKeptForm } from '../../../shared/card-form/use-kept-form.ts'
import { useToday } from '../../../shared/card-form/use-today.ts'
import { useWrite } from '../../../shared/client/use-write.ts'
import type { Format } from '../../../shared/format/format.ts'
import { useFormat } from '../../../shared/format/use-format.ts'
import { CheckField } from '../../../shared/table-form/check-field.tsx'
import { TextField } from '../../../shared/table-form/text-field.tsx'
import type { ActionFormProps } from './lot-actions.tsx'
import { wholeNumber } from './whole-number.ts'

const EMPTY = { tested: '', sprouted: '', fromStock: true, note: '', on: '' }

/** A germination result: how many were laid out and how many sprouted. */
export function GerminationForm({ lot, keptAs, onClose }: ActionFormProps) {
  const today = useToday()
  const format = useFormat()
  const { typed, change, letGo } = useKeptForm(keptAs, EMPTY)
  const write = useWrite('germination.record')
  const tested = wholeNumber(typed.tested)
  const sprouted = wholeNumber(typed.sprouted)
  const send = () =>
    write.mutate(
      {
        lotId: lot.lotId,
        on: typed.on || today,
        tested: tested ?? 0,
        sprouted: sprouted ?? 0,
        fromStock: typed.fromStock,
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
      title="Enter germination"
      sendWord="Write the result down"
      busy={write.isPending || tested === null || sprouted === null}
      error={write.error}
      shownAtField={['tested', 'sprouted', 'note', 'on']}
      onSend={send}
      onClose={onClose}
    >
      <TextField
        label={`${lot.unit.many} laid out`}
        step="tested"
        size="record"
        value={typed.tested}
        onChange={(value) => change({ tested: value })}
        problem={problemAt(write.error, 'tested')}
      />
      <TextField
        label="of them sprouted"
        step="sprouted"
        size="record"
        value={typed.sprouted}
        onChange={(value) => change({ sprouted: value })}
        words={resultInWords(tested, sprouted, format)}
        problem={problemAt(write.error, 'sprouted')}
      />
      <DayField
        value={typed.on || today}
        onChange={(on) => change({ on })}
        problem={problemAt(write.error, 'on')}
      />
      <TextField
        label="Note"
        step="note"
        size="record"
        value={typed.note}
        onChange={(note) => change({ note })}
        problem={problemAt(write.error, 'note')}
      />
      <CheckField
        label={`the ${lot.unit.many} laid out came from this lot`}
        step="from-stock"
        checked={typed.fromStock}
        onChange={(fromStock) => change({ fromStock })}
      />
    </CardForm>
  )
}

function resultInWords(tested: number | null, sprouted: number | null, format: Format): string {
  if (tested === null || sprouted === null || tested < 1) return ''
  if (sprouted > tested) return 'More sprouted than were laid out. Check both numbers.'
  const [low, high] = wilsonInterval(sprouted, tested)
  return `${format.percent(sprouted / tested)}; with so many laid out it may be anything from ${format.percent(low)} to ${format.percent(high)}`
}
