import { CardForm } from '../../../shared/card-form/card-form.tsx'
import { DayField } from '../../../shared/card-form/day-field.tsx'
import { useCardForm } from '../../../shared/card-form/use-card-form.ts'
import { ROLE_WORDS } from '../../../shared/format/words.ts'
import { CheckField } from '../../../shared/table-form/check-field.tsx'
import { TextField } from '../../../shared/table-form/text-field.tsx'
import type { ActionFormProps } from './action-form-props.ts'

interface Typed {
  readonly from: readonly number[]
  readonly note: string
  readonly on: string
}

const EMPTY: Typed = { from: [], note: '', on: '' }

/** Pours other lots of the accession into this one. */
export function MergeForm({ lot, draftName, onClose }: ActionFormProps) {
  const form = useCardForm({ draftName, empty: EMPTY, writes: 'lot.merge', onClose })
  const { from, note } = form.typed
  return (
    <CardForm
      title={`Pour into ${lot.lotNumber}`}
      sendWord="Pour together"
      {...form.frame}
      busy={form.frame.busy || from.length === 0}
      onSend={() => form.send({ intoLotId: lot.lotId, fromLotIds: [...from], on: form.dayOf('on'), note })}
    >
      <fieldset className="stack-2 boxed card-form-wide">
        <legend>Lots that are poured in and left empty</legend>
        {lot.siblings.map((sibling) => (
          <CheckField
            key={sibling.lotId}
            label={`${sibling.lotNumber}, ${ROLE_WORDS[sibling.role]}, ${sibling.harvest}: ${sibling.quantity.words}`}
            checked={from.includes(sibling.lotId)}
            onChange={(ticked) =>
              form.change({
                from: ticked ? [...from, sibling.lotId] : from.filter((lotId) => lotId !== sibling.lotId),
              })
            }
          />
        ))}
      </fieldset>
      <TextField label="Note" size="record" {...form.field('note')} />
      <DayField {...form.day('on')} />
    </CardForm>
  )
}
