import type { FC } from 'react'
import type { LotRecord } from '../../../../db/contract/shelf-operations.ts'
import { useOpenForm } from '../../../shared/card-form/use-open-form.ts'
import { isBegun } from '../../../shared/card-form/use-saved-form.ts'
import { GerminationForm } from '../../../shared/germination-form/germination-form.tsx'
import type { ActionFormProps } from './action-form-props.ts'
import { ContainerForm } from './container-form.tsx'
import { DiscardForm } from './discard-form.tsx'
import { DryingForm } from './drying-form.tsx'
import { MergeForm } from './merge-form.tsx'
import { MoistureForm } from './moisture-form.tsx'
import { MoveForm } from './move-form.tsx'
import { PrintForm } from './print-form.tsx'
import { QuarantineForm } from './quarantine-form.tsx'
import { SameVarietyForm } from './same-variety-form.tsx'
import { SplitForm } from './split-form.tsx'
import { TakeStockForm } from './take-stock-form.tsx'
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
  { name: 'join', word: () => 'Join', form: MergeForm, fits: hasCompany },
  { name: 'same-variety', word: () => 'Same variety', form: SameVarietyForm },
  { name: 'quarantine', word: (lot) => (lot.quarantined ? 'Release' : 'Quarantine'), form: QuarantineForm },
  { name: 'discard', word: () => 'Discard', form: DiscardForm },
]

/** What can be done with the lot, in words; each opens its form right here in the card. */
export function LotActions({ lot }: { readonly lot: LotRecord }) {
  const { open, button, close } = useOpenForm<string>()
  const draftName = (action: string) => `${lot.lotId}/${action}`
  const fitting = ACTIONS.filter((action) => action.fits?.(lot) ?? true)
  const OpenForm = fitting.find((action) => action.name === open)?.form
  return (
    <section className="pane-part" aria-label="What to do with it">
      <div className="buttons">
        {fitting.map(({ name, word }) => (
          <button key={name} type="button" className="quiet-button" {...button(name)}>
            {word(lot)}
            {open !== name && isBegun(draftName(name)) && <span className="soft"> (begun)</span>}
          </button>
        ))}
      </div>
      {OpenForm !== undefined && open !== null && (
        <OpenForm key={open} lot={lot} draftName={draftName(open)} onClose={() => close(open)} />
      )}
    </section>
  )
}

function hasCompany(lot: LotRecord): boolean {
  return lot.siblings.length > 0
}
