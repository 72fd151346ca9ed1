import type { Duplicate } from '../../../../db/contract/elsewhere-operations.ts'
import { CardForm } from '../../../shared/card-form/card-form.tsx'
import type { formFields } from '../../../shared/card-form/form-fields.tsx'
import { useCardForm } from '../../../shared/card-form/use-card-form.ts'
import { useRead } from '../../../shared/client/use-read.ts'
import { useTexts } from '../../../shared/format/use-texts.ts'
import type { ActionFormProps } from './action-form-props.ts'
import { PlaceField } from './place-field.tsx'

/** What a holder agreed to while it is typed; a day that is not said is ''. */
export interface TypedTerms {
  readonly contact: string
  readonly agreement: string
  readonly agreementEnds: string
  readonly conditions: string
  readonly nextLook: string
}

export const NO_TERMS: TypedTerms = {
  contact: '',
  agreement: '',
  agreementEnds: '',
  conditions: '',
  nextLook: '',
}

/** The terms as the collection takes them. */
export function termsOf({ contact, agreement, agreementEnds, conditions, nextLook }: TypedTerms) {
  return {
    contact,
    agreement,
    agreementEnds: agreementEnds || null,
    conditions,
    nextLook: nextLook || null,
  }
}

type TermsForm = Pick<ReturnType<typeof formFields<TypedTerms>>, 'textField' | 'dateField'>

/** What whoever holds a duplicate agreed to; all of it may stay empty. `within`: where its fields stand in the input. */
export function TermsFields({ form, within = '' }: { readonly form: TermsForm; readonly within?: string }) {
  const { t } = useTexts()
  return (
    <>
      {form.textField('contact', t('elsewhere.contact'), { path: `${within}contact` })}
      {form.textField('agreement', t('elsewhere.agreement'), {
        path: `${within}agreement`,
        hint: t('elsewhere.agreement-hint'),
      })}
      {form.dateField('agreementEnds', t('elsewhere.agreement-ends'))}
      {form.textField('conditions', t('elsewhere.conditions'), { path: `${within}conditions` })}
      {form.dateField('nextLook', t('elsewhere.next-look'))}
    </>
  )
}

/** Notes what whoever holds a duplicate agreed to, beginning with what is noted. */
export function DuplicateTermsForm({ lot, ...kept }: ActionFormProps) {
  const [duplicate] = useRead('duplicate.list', { lotId: lot.lotId }).data?.duplicates ?? []
  return duplicate === undefined ? null : <TermsOfDuplicate duplicate={duplicate} {...kept} />
}

interface TermsOfDuplicateProps extends Omit<ActionFormProps, 'lot'> {
  readonly duplicate: Duplicate
}

function TermsOfDuplicate({ duplicate, ...kept }: TermsOfDuplicateProps) {
  const { t } = useTexts()
  const { lotId, contact, agreement, agreementEnds, conditions, nextLook } = duplicate
  const empty: TypedTerms = {
    contact,
    agreement,
    agreementEnds: agreementEnds ?? '',
    conditions,
    nextLook: nextLook ?? '',
  }
  const form = useCardForm({ ...kept, empty, writes: 'duplicate.change' })
  return (
    <CardForm
      title={t('elsewhere.terms-title', { holder: duplicate.holder })}
      sendWord={t('elsewhere.note-terms')}
      {...form.sending({ lotId, ...termsOf(form.typed) })}
    >
      <TermsFields form={form} />
    </CardForm>
  )
}

const HOME_ROLES = ['reserve', 'working'] as const

const NOT_HOME = { role: 'reserve' as (typeof HOME_ROLES)[number], placeId: null as number | null, on: '' }

/** Takes a duplicate home into a place of the library. */
export function BringHomeForm({ lot: { lotId }, ...kept }: ActionFormProps) {
  const { t } = useTexts()
  const form = useCardForm({ ...kept, empty: NOT_HOME, writes: 'duplicate.bring-home' })
  const { role, placeId } = form.typed
  return (
    <CardForm
      title={t('elsewhere.do-bring-home')}
      sendWord={t('elsewhere.bring-home')}
      {...form.sending(placeId === null ? null : { lotId, role, placeId, on: form.dayOf('on') })}
    >
      {form.selectField(
        'role',
        t('elsewhere.it-is-now'),
        HOME_ROLES.map((value) => ({ value, label: t(`shelf.new-lot-${value}`) })),
      )}
      <PlaceField
        label={t('shelf.where-it-goes')}
        none={t('shelf.choose-place')}
        {...form.choice('placeId')}
      />
      {form.dayField('on')}
      <p className="card-form-wide soft">{t('elsewhere.home-hint')}</p>
    </CardForm>
  )
}
