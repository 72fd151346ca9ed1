import { CardForm, problemAt } from '../../../shared/card-form/card-form.tsx'
import { DayField } from '../../../shared/card-form/day-field.tsx'
import { useKeptForm } from '../../../shared/card-form/use-kept-form.ts'
import { useToday } from '../../../shared/card-form/use-today.ts'
import { useWrite } from '../../../shared/client/use-write.ts'
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
export function JoinForm({ lot, keptAs, onClose }: ActionFormProps) {
  const today = useToday()
  const { typed, change, letGo } = useKeptForm(keptAs, EMPTY)
  const write = useWrite('lot.join')
  const send = () =>
    write.mutate(
      { intoLotId: lot.lotId, fromLotIds: [...typed.from], on: typed.on || today, note: typed.note },
      {
        onSuccess: () => {
          letGo()
          onClose()
        },
      },
    )
  return (
    <CardForm
      title={`Pour into ${lot.lotNumber}`}
      sendWord="Pour together"
      busy={write.isPending || typed.from.length === 0}
      error={write.error}
      shownAtField={['note', 'on']}
      onSend={send}
      onClose={onClose}
    >
      <fieldset className="new-place card-form-wide">
        <legend>Lots that are poured in and left empty</legend>
        {lot.siblings.map((sibling) => (
          <CheckField
            key={sibling.lotId}
            label={`${sibling.lotNumber}, ${ROLE_WORDS[sibling.role]}, ${sibling.harvest}: ${sibling.quantity.words}`}
            step={`lot-${sibling.lotId}`}
            checked={typed.from.includes(sibling.lotId)}
            onChange={(ticked) =>
              change({
                from: ticked
                  ? [...typed.from, sibling.lotId]
                  : typed.from.filter((lotId) => lotId !== sibling.lotId),
              })
            }
          />
        ))}
      </fieldset>
      <TextField
        label="Note"
        step="note"
        size="record"
        value={typed.note}
        onChange={(note) => change({ note })}
        problem={problemAt(write.error, 'note')}
      />
      <DayField
        value={typed.on || today}
        onChange={(on) => change({ on })}
        problem={problemAt(write.error, 'on')}
      />
    </CardForm>
  )
}
