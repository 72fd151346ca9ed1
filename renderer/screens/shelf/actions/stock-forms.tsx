import type { LotRole } from '../../../../db/contract/fields.ts'
import type { LotRecord } from '../../../../db/contract/stock-operations.ts'
import { CardForm } from '../../../shared/card-form/card-form.tsx'
import { useCardForm } from '../../../shared/card-form/use-card-form.ts'
import { useTexts } from '../../../shared/format/use-texts.ts'
import { CheckField } from '../../../shared/table-form/fields.tsx'
import type { ActionFormProps } from './action-form-props.ts'
import { NO_TERMS, TermsFields, termsOf } from './duplicate-forms.tsx'
import { PlaceField } from './place-field.tsx'

const NOT_COUNTED = { found: '', nothing: false, reason: '', on: '' }

/** What was found by weighing or counting; the difference is written with its reason. */
export function TakeStockForm({ lot: { lotId, quantity }, ...kept }: ActionFormProps) {
  const { t } = useTexts()
  const form = useCardForm({ ...kept, empty: NOT_COUNTED, writes: 'lot.record-count' })
  const { found, nothing, reason } = form.typed
  return (
    <CardForm
      title={t('shelf.do-take-stock')}
      sendWord={t('shelf.write-found')}
      {...form.sending({ lotId, on: form.dayOf('on'), found: nothing ? 'nothing' : found, reason })}
      onChoose={form.choice('found').onChange}
    >
      {!nothing && form.amountField('found', t('shelf.found-amount', { amount: quantity.words }), lotId)}
      {form.textField('reason', t('shelf.why-it-differs'), { hint: t('shelf.why-it-differs-hint') })}
      {form.dayField('on')}
      {form.checkField('nothing', t('shelf.nothing-left'))}
    </CardForm>
  )
}

const KEPT = { amount: '', everything: false, reason: '', on: '' }

/** Seed that is thrown away, with the reason. */
export function DiscardForm({ lot: { lotId, cautions }, ...kept }: ActionFormProps) {
  const { t } = useTexts()
  const form = useCardForm({ ...kept, empty: KEPT, writes: 'lot.discard' })
  const { amount, everything, reason } = form.typed
  return (
    <CardForm
      title={t('shelf.do-discard')}
      sendWord={t(everything ? 'shelf.discard-all' : 'shelf.do-discard')}
      {...form.sending({ lotId, on: form.dayOf('on'), amount: everything ? 'everything' : amount, reason })}
      onChoose={form.choice('amount').onChange}
    >
      <DiscardCare cautions={cautions} />
      {!everything && form.amountField('amount', t('shelf.how-much'), lotId)}
      {form.textField('reason', t('shelf.why'), { hint: t('shelf.why-discard-hint') })}
      {form.dayField('on')}
      {form.checkField('everything', t('shelf.everything'))}
    </CardForm>
  )
}

/** What must be minded before seed with a caution is thrown away. */
function DiscardCare({ cautions }: Pick<LotRecord, 'cautions'>) {
  const { t } = useTexts()
  const care = [...new Set(cautions.map(({ whenDiscarded }) => whenDiscarded))].filter((told) => told !== '')
  if (care.length === 0) return null
  return (
    <div className="card-form-wide card-cautions">
      <p className="strong">{t('shelf.discard-care')}</p>
      {care.map((told) => (
        <p key={told}>{told}</p>
      ))}
    </div>
  )
}

const ROLES: readonly LotRole[] = ['reserve', 'working', 'reference', 'duplicate-elsewhere']

const NOT_SPLIT = {
  amount: '',
  role: 'reserve' as LotRole,
  placeId: null as number | null,
  heldBy: '',
  note: '',
  on: '',
  ...NO_TERMS,
}

/** Moves part of the lot into a new lot with a role of its own. */
export function SplitForm({ lot: { lotId, quantity }, ...kept }: ActionFormProps) {
  const { t } = useTexts()
  const form = useCardForm({ ...kept, empty: NOT_SPLIT, writes: 'lot.split' })
  const { typed } = form
  const { amount, role, note } = typed
  const where =
    role === 'duplicate-elsewhere'
      ? { heldBy: typed.heldBy, terms: termsOf(typed) }
      : { placeId: typed.placeId }
  return (
    <CardForm
      title={t('shelf.split-title')}
      sendWord={t('shelf.split-off')}
      {...form.sending({ lotId, amount, role, note, on: form.dayOf('on'), ...where })}
      onChoose={form.choice('amount').onChange}
    >
      {form.amountField('amount', t('shelf.how-much-of', { amount: quantity.words }), lotId)}
      {form.selectField(
        'role',
        t('shelf.new-lot-is'),
        ROLES.map((value) => ({ value, label: t(`shelf.new-lot-${value}`) })),
      )}
      {typed.role === 'duplicate-elsewhere' ? (
        <>
          {form.textField('heldBy', t('shelf.who-holds-it'))}
          <TermsFields form={form} within="terms." />
        </>
      ) : (
        <PlaceField
          label={t('shelf.where-it-goes')}
          none={t('shelf.nowhere-yet')}
          {...form.choice('placeId')}
        />
      )}
      {form.textField('note', t('shelf.note'))}
      {form.dayField('on')}
    </CardForm>
  )
}

const NOTHING_POURED = { from: [] as readonly number[], note: '', on: '' }

/** Pours other lots of the accession into this one. */
export function MergeForm({ lot, ...kept }: ActionFormProps) {
  const { t } = useTexts()
  const form = useCardForm({ ...kept, empty: NOTHING_POURED, writes: 'lot.merge' })
  const { from, note } = form.typed
  const input = { intoLotId: lot.lotId, fromLotIds: [...from], on: form.dayOf('on'), note }
  return (
    <CardForm
      title={t('shelf.pour-into', { lot: lot.lotNumber })}
      sendWord={t('shelf.pour-together')}
      {...form.sending(from.length === 0 ? null : input)}
    >
      <fieldset className="stack-2 boxed card-form-wide">
        <legend>{t('shelf.lots-poured')}</legend>
        {lot.siblings.map(({ lotId, lotNumber, role, harvest, quantity }) => (
          <CheckField
            key={lotId}
            label={`${lotNumber}, ${t(`shelf.role-${role}`)}, ${harvest}: ${quantity.words}`}
            checked={from.includes(lotId)}
            onChange={(ticked) =>
              form.change({ from: ticked ? [...from, lotId] : from.filter((each) => each !== lotId) })
            }
          />
        ))}
      </fieldset>
      {form.textField('note', t('shelf.note'))}
      {form.dayField('on')}
    </CardForm>
  )
}
