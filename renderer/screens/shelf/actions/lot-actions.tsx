import type { FC } from 'react'
import type { LotRecord } from '../../../../db/contract/stock-operations.ts'
import type { OpenForm } from '../../../shared/card-form/use-open-form.ts'
import { isBegun } from '../../../shared/card-form/use-saved-form.ts'
import { GerminationForm } from '../../../shared/germination-form/germination-form.tsx'
import { LabelPrint } from '../../../shared/labels/label-print.tsx'
import { packetInWords } from '../lot-facts.tsx'
import type { ActionFormProps } from './action-form-props.ts'
import { ContainerForm, MoveForm, QuarantineForm } from './keeping-forms.tsx'
import { DryingForm, MoistureForm } from './moisture-forms.tsx'
import { SameVarietyForm } from './same-variety-form.tsx'
import { DiscardForm, MergeForm, SplitForm, TakeStockForm } from './stock-forms.tsx'
import { WeighSeedsForm } from './weigh-seeds-form.tsx'

interface Action {
  readonly name: string
  readonly word: (lot: LotRecord) => string
  readonly form: FC<ActionFormProps>
  readonly fits?: (lot: LotRecord) => boolean
}

const ACTIONS: readonly Action[] = [
  { name: 'print', word: () => 'Print label', form: PrintForm },
  { name: 'take-stock', word: () => 'Take stock', form: TakeStockForm },
  { name: 'weigh-seeds', word: ({ unit }) => `Weigh ${unit.many}`, form: WeighSeedsForm },
  { name: 'germination', word: () => 'Enter germination', form: GerminationForm },
  { name: 'moisture', word: () => 'Moisture', form: MoistureForm },
  { name: 'drying', word: () => 'Dry it', form: DryingForm },
  { name: 'container', word: () => 'Container', form: ContainerForm },
  { name: 'split', word: () => 'Split', form: SplitForm },
  { name: 'move', word: () => 'Move', form: MoveForm },
  { name: 'join', word: () => 'Join', form: MergeForm, fits: ({ siblings }) => siblings.length > 0 },
  { name: 'same-variety', word: () => 'Same variety', form: SameVarietyForm },
  { name: 'quarantine', word: (lot) => (lot.quarantined ? 'Release' : 'Quarantine'), form: QuarantineForm },
  { name: 'discard', word: () => 'Discard', form: DiscardForm },
]

interface LotActionsProps {
  readonly lot: LotRecord
  /** The lot that was asked for: while its card is on the way, a button of the last card is pressed for it. */
  readonly askedLotId: number
  readonly forms: OpenForm<string>
}

/** What can be done with the lot, in words; each opens its form right here in the card. */
export function LotActions({ lot, askedLotId, forms: { open, button, close } }: LotActionsProps) {
  const formName = (action: string, lotId = lot.lotId) => `${lotId}/${action}`
  const fitting = ACTIONS.filter((action) => action.fits?.(lot) ?? true)
  const OpenForm = fitting.find(({ name }) => formName(name) === open)?.form
  return (
    <section className="pane-part" aria-label="What to do with it">
      <div className="buttons">
        {fitting.map(({ name, word }) => (
          <button key={name} type="button" className="quiet-button" {...button(formName(name, askedLotId))}>
            {word(lot)}
            {open !== formName(name) && isBegun(formName(name)) && <span className="soft"> (begun)</span>}
          </button>
        ))}
      </div>
      {OpenForm !== undefined && open !== null && (
        <OpenForm key={open} lot={lot} draftName={open} onClose={() => close(open)} />
      )}
    </section>
  )
}

function PrintForm({ lot, onClose }: ActionFormProps) {
  return (
    <LabelPrint title="Print label" lotIds={[lot.lotId]} contents={packetInWords(lot)} onClose={onClose} />
  )
}
