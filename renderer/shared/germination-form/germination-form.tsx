import { wilsonInterval } from '../../../db/domain/germination/wilson.ts'
import { CardForm } from '../card-form/card-form.tsx'
import { useCardForm } from '../card-form/use-card-form.ts'
import { wholeNumber } from '../card-form/whole-number.ts'
import type { Format } from '../format/format.ts'
import { useFormat } from '../format/use-format.ts'

const EMPTY = { tested: '', sprouted: '', fromStock: true, note: '', on: '', startedOn: '' }

interface GerminationFormProps {
  readonly lot: { readonly lotId: number; readonly unit: { readonly many: string } }
  /** The name by which what is typed is kept. */
  readonly draftName: string
  readonly onClose: () => void
}

/** A test that is over, entered in one go: how many were laid out and how many sprouted. */
export function GerminationForm({ lot, ...kept }: GerminationFormProps) {
  const format = useFormat()
  const form = useCardForm({ ...kept, empty: EMPTY, writes: 'germination.record' })
  const { fromStock, note } = form.typed
  const startedOn = form.typed.startedOn || null
  const [tested, sprouted] = [wholeNumber(form.typed.tested), wholeNumber(form.typed.sprouted)]
  const input =
    tested === null || sprouted === null
      ? null
      : { lotId: lot.lotId, on: form.dayOf('on'), startedOn, tested, sprouted, fromStock, note }
  return (
    <CardForm title="Enter germination" sendWord="Write the result down" {...form.sending(input)}>
      {form.textField('tested', `${lot.unit.many} laid out`)}
      {form.textField('sprouted', 'of them sprouted', { words: resultInWords(tested, sprouted, format) })}
      {form.dayField('on')}
      {form.textField('startedOn', 'Laid out on', {
        type: 'date',
        hint: 'where somebody wrote it down',
        words: startedOn === null ? '' : format.day(startedOn),
      })}
      {form.textField('note', 'Note')}
      {form.checkField('fromStock', `the ${lot.unit.many} laid out came from this lot`)}
    </CardForm>
  )
}

function resultInWords(tested: number | null, sprouted: number | null, format: Format): string {
  if (tested === null || sprouted === null || tested < 1) return ''
  if (sprouted > tested) return 'More sprouted than were laid out. Check both numbers.'
  const [low, high] = wilsonInterval(sprouted, tested)
  return `${format.percent(sprouted / tested)}; with so many laid out it may be anything from ${format.percent(low)} to ${format.percent(high)}`
}
