import type { FC } from 'react'
import type { LotRecord } from '../../../../db/contract/stock-operations.ts'
import { isPiece } from '../../../../db/domain/crops/pieces.ts'
import { type Message, message } from '../../../../db/messages/message.ts'
import type { OpenForm } from '../../../shared/card-form/use-open-form.ts'
import { isBegun } from '../../../shared/card-form/use-saved-form.ts'
import { useTexts } from '../../../shared/format/use-texts.ts'
import { GerminationForm } from '../../../shared/germination-form/germination-form.tsx'
import { LabelPrint } from '../../../shared/labels/label-print.tsx'
import { packetInWords } from '../lot-facts.tsx'
import type { ActionFormProps } from './action-form-props.ts'
import { CautionForm, EndCautionForm } from './caution-forms.tsx'
import { DecideForm } from './decide-form.tsx'
import { BringHomeForm, DuplicateTermsForm } from './duplicate-forms.tsx'
import { ContainerForm, MoveForm, QuarantineForm } from './keeping-forms.tsx'
import { DryingForm, MoistureForm } from './moisture-forms.tsx'
import { SameVarietyForm } from './same-variety-form.tsx'
import { DiscardForm, MergeForm, SplitForm, TakeStockForm } from './stock-forms.tsx'
import { TermsForm } from './terms-form.tsx'
import { WeighSeedsForm } from './weigh-seeds-form.tsx'

interface Action {
  readonly name: string
  readonly word: (lot: LotRecord) => Message
  readonly form: FC<ActionFormProps>
  readonly fits?: (lot: LotRecord) => boolean
}

/** A clove, a bulb or a tuber is neither tested nor dried. */
function isOfSeed({ unit }: LotRecord): boolean {
  return !isPiece(unit.one)
}

/** What a keeper does every week; it stands first. */
const EVERYDAY: readonly Action[] = [
  { name: 'print', word: () => message('shelf.do-print'), form: PrintForm },
  { name: 'take-stock', word: () => message('shelf.do-take-stock'), form: TakeStockForm },
  {
    name: 'weigh-seeds',
    word: ({ unit }) => message('shelf.do-weigh', { unit: unit.one }),
    form: WeighSeedsForm,
  },
  { name: 'germination', word: () => message('shelf.do-germination'), form: GerminationForm, fits: isOfSeed },
  { name: 'move', word: () => message('shelf.do-move'), form: MoveForm, fits: (lot) => !isAway(lot) },
  { name: 'bring-home', word: () => message('elsewhere.do-bring-home'), form: BringHomeForm, fits: isAway },
  {
    name: 'duplicate-terms',
    word: () => message('elsewhere.do-terms'),
    form: DuplicateTermsForm,
    fits: isAway,
  },
  { name: 'split', word: () => message('shelf.do-split'), form: SplitForm },
  {
    name: 'quarantine',
    word: (lot) =>
      message(
        !lot.quarantined
          ? 'shelf.do-quarantine'
          : lot.cameBack === null
            ? 'shelf.do-release'
            : 'returns.check-title',
      ),
    form: QuarantineForm,
  },
  { name: 'discard', word: () => message('shelf.do-discard'), form: DiscardForm },
]

/** The rest, folded away: how the seed is kept, then what holds for it. */
const NOW_AND_THEN: readonly Action[] = [
  { name: 'moisture', word: () => message('shelf.do-moisture'), form: MoistureForm, fits: isOfSeed },
  { name: 'drying', word: () => message('shelf.do-drying'), form: DryingForm, fits: isOfSeed },
  { name: 'container', word: () => message('shelf.do-container'), form: ContainerForm },
  {
    name: 'merge',
    word: () => message('shelf.do-join'),
    form: MergeForm,
    fits: ({ siblings }) => siblings.length > 0,
  },
  { name: 'same-variety', word: () => message('shelf.do-same-variety'), form: SameVarietyForm },
  { name: 'keep-or-not', word: () => message('keeping.do-decide'), form: DecideForm },
  { name: 'terms', word: () => message('terms.terms'), form: TermsForm },
  { name: 'caution', word: () => message('shelf.do-caution'), form: CautionForm },
  {
    name: 'end-caution',
    word: () => message('shelf.do-end-caution'),
    form: EndCautionForm,
    fits: ({ cautions }) => cautions.length > 0,
  },
]

function isAway({ role }: LotRecord): boolean {
  return role === 'duplicate-elsewhere'
}

interface LotActionsProps {
  readonly lot: LotRecord
  /** The lot that was asked for: while its card is on the way, a button of the last card is pressed for it. */
  readonly askedLotId: number
  readonly forms: OpenForm<string>
  /** Whether what is done now and then is unfolded: it stays so from lot to lot. */
  readonly unfolded: boolean
  readonly onUnfold: (unfolded: boolean) => void
}

/** What can be done with the lot, in words; each opens its form right here in the card. */
export function LotActions({ lot, askedLotId, forms, unfolded, onUnfold }: LotActionsProps) {
  const { t, say } = useTexts()
  const { open, button, close } = forms
  const formName = (action: string, lotId = lot.lotId) => `${lotId}/${action}`
  const fitting = (actions: readonly Action[]) => actions.filter(({ fits }) => fits?.(lot) ?? true)
  const everyday = fitting(EVERYDAY)
  const nowAndThen = fitting(NOW_AND_THEN)
  const OpenForm = [...everyday, ...nowAndThen].find(({ name }) => formName(name) === open)?.form
  const buttonsOf = (actions: readonly Action[]) => (
    <div className="buttons">
      {actions.map(({ name, word }) => (
        <button key={name} type="button" className="quiet-button" {...button(formName(name, askedLotId))}>
          {say(word(lot))}
          {open !== formName(name) && isBegun(formName(name)) && (
            <span className="soft"> ({t('shelf.begun')})</span>
          )}
        </button>
      ))}
    </div>
  )
  return (
    <section className="pane-part what-to-do" aria-label={t('shelf.what-to-do')}>
      {buttonsOf(everyday)}
      <details
        className="more"
        open={unfolded || nowAndThen.some(({ name }) => isBegun(formName(name)))}
        onToggle={({ currentTarget }) => onUnfold(currentTarget.open)}
      >
        <summary>{t('shelf.do-more')}</summary>
        {buttonsOf(nowAndThen)}
      </details>
      {OpenForm !== undefined && open !== null && (
        <OpenForm key={open} lot={lot} draftName={open} onClose={() => close(open)} />
      )}
    </section>
  )
}

function PrintForm({ lot, onClose }: ActionFormProps) {
  const { t } = useTexts()
  return (
    <LabelPrint
      title={t('shelf.do-print')}
      lotIds={[lot.lotId]}
      contents={packetInWords(lot, t)}
      onClose={onClose}
    />
  )
}
