import { wilsonInterval } from '../../../db/domain/germination/wilson.ts'
import { CardForm } from '../card-form/card-form.tsx'
import { DayField } from '../card-form/day-field.tsx'
import { useCardForm } from '../card-form/use-card-form.ts'
import { wholeNumber } from '../card-form/whole-number.ts'
import type { Format } from '../format/format.ts'
import { useFormat } from '../format/use-format.ts'
import { CheckField, TextField } from '../table-form/fields.tsx'

const EMPTY = { tested: '', sprouted: '', fromStock: true, note: '', on: '', startedOn: '' }

interface GerminationFormProps {
  readonly lot: { readonly lotId: number; readonly unit: { readonly many: string } }
  /** The name by which what is typed is kept. */
  readonly draftName: string
  readonly onClose: () => void
}

/** A test that is over, entered in one go: how many were laid out and how many sprouted. */
export function GerminationForm({ lot, draftName, onClose }: GerminationFormProps) {
  const format = useFormat()
  const form = useCardForm({ draftName, empty: EMPTY, writes: 'germination.record', onClose })
  const { startedOn, fromStock, note } = form.typed
  const tested = wholeNumber(form.typed.tested)
  const sprouted = wholeNumber(form.typed.sprouted)
  const send = () => {
    if (tested === null || sprouted === null) return
    form.send({
      lotId: lot.lotId,
      on: form.dayOf('on'),
      startedOn: startedOn === '' ? null : startedOn,
      tested,
      sprouted,
      fromStock,
      note,
    })
  }
  return (
    <CardForm
      title="Enter germination"
      sendWord="Write the result down"
      {...form.frame}
      busy={form.frame.busy || tested === null || sprouted === null}
      onSend={send}
    >
      <TextField label={`${lot.unit.many} laid out`} size="record" {...form.field('tested')} />
      <TextField
        label="of them sprouted"
        size="record"
        {...form.field('sprouted')}
        words={resultInWords(tested, sprouted, format)}
      />
      <DayField {...form.day('on')} />
      <TextField
        label="Laid out on"
        type="date"
        size="record"
        {...form.field('startedOn')}
        hint="where somebody wrote it down"
        words={startedOn === '' ? '' : format.day(startedOn)}
      />
      <TextField label="Note" size="record" {...form.field('note')} />
      <CheckField label={`the ${lot.unit.many} laid out came from this lot`} {...form.check('fromStock')} />
    </CardForm>
  )
}

function resultInWords(tested: number | null, sprouted: number | null, format: Format): string {
  if (tested === null || sprouted === null || tested < 1) return ''
  if (sprouted > tested) return 'More sprouted than were laid out. Check both numbers.'
  const [low, high] = wilsonInterval(sprouted, tested)
  return `${format.percent(sprouted / tested)}; with so many laid out it may be anything from ${format.percent(low)} to ${format.percent(high)}`
}
