import { wilsonInterval } from '../../../db/domain/germination/wilson.ts'
import { CardForm, problemAt } from '../card-form/card-form.tsx'
import { DayField } from '../card-form/day-field.tsx'
import { useKeptForm } from '../card-form/use-kept-form.ts'
import { useToday } from '../card-form/use-today.ts'
import { wholeNumber } from '../card-form/whole-number.ts'
import { useWrite } from '../client/use-write.ts'
import type { Format } from '../format/format.ts'
import { useFormat } from '../format/use-format.ts'
import { CheckField } from '../table-form/check-field.tsx'
import { TextField } from '../table-form/text-field.tsx'

const EMPTY = { tested: '', sprouted: '', fromStock: true, note: '', on: '', startedOn: '' }

interface GerminationFormProps {
  readonly lot: { readonly lotId: number; readonly unit: { readonly many: string } }
  /** The name by which what is typed is kept. */
  readonly keptAs: string
  readonly onClose: () => void
}

/** A test that is over, entered in one go: how many were laid out and how many sprouted. */
export function GerminationForm({ lot, keptAs, onClose }: GerminationFormProps) {
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
        startedOn: typed.startedOn === '' ? null : typed.startedOn,
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
      shownAtField={['tested', 'sprouted', 'note', 'on', 'startedOn']}
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
        label="Laid out on"
        step="started-on"
        type="date"
        size="record"
        value={typed.startedOn}
        onChange={(startedOn) => change({ startedOn })}
        hint="where somebody wrote it down"
        words={typed.startedOn === '' ? '' : format.day(typed.startedOn)}
        problem={problemAt(write.error, 'startedOn')}
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
