import { Link } from 'wouter'
import type { InstitutionVisit } from '../../../db/contract/elsewhere-operations.ts'
import { lotAddress } from '../addresses.ts'
import { CardForm } from '../card-form/card-form.tsx'
import { useCardForm } from '../card-form/use-card-form.ts'
import { useOpenForm } from '../card-form/use-open-form.ts'
import { useFormat } from '../format/use-format.ts'
import { useTexts } from '../format/use-texts.ts'
import { FactList } from '../parts/fact-list.tsx'
import { institutionOf } from './institution-draft.ts'
import { InstitutionFields } from './institution-fields.tsx'

/** Hand-outs to institutions: what is open of each, what was noted, and the forms that go on with it. */
export function InstitutionVisits({ visits }: { readonly visits: readonly InstitutionVisit[] }) {
  return visits.map((visit) => <OneVisit key={visit.withdrawalId} visit={visit} />)
}

function OneVisit({ visit }: { readonly visit: InstitutionVisit }) {
  const { t } = useTexts()
  const format = useFormat()
  const { open, button, close } = useOpenForm<'change' | 'report'>()
  const { personId, institution, askedOn, sentOn, lots, reports } = visit
  const day = (on: string | null) => (on === null ? '' : format.day(on))
  const name = institution || t('elsewhere.erased')
  return (
    <section
      className="pane-part stack-2"
      aria-label={t('elsewhere.visit', { institution: name, on: { day: visit.on } })}
    >
      <h3>
        {personId === null ? name : <Link href={`/people/${personId}`}>{name}</Link>}, {format.day(visit.on)}
      </h3>
      {visit.open.map(({ step, words }) => (
        <p key={step} className="caution">
          {words}
        </p>
      ))}
      <ul className="bullets">
        {lots.map(({ lotId, lotNumber, variety, words }) => (
          <li key={lotId}>
            <Link href={lotAddress(lotId)}>{lotNumber}</Link> {variety}: {words}
          </li>
        ))}
      </ul>
      <FactList
        facts={[
          { name: t('elsewhere.asked-on'), value: day(askedOn) },
          { name: t('elsewhere.intended-use'), value: visit.intendedUse },
          { name: t('elsewhere.agreement-signed'), value: visit.agreement },
          { name: t('elsewhere.plant-health'), value: visit.plantHealth },
          { name: t('elsewhere.sent-on'), value: day(sentOn) },
        ]}
      />
      {reports.map(({ on, note }) => (
        <p key={`${on} ${note}`}>{t('elsewhere.reported', { on: { day: on }, note })}</p>
      ))}
      <p className="buttons">
        <button type="button" className="quiet-button" {...button('change')}>
          {t('elsewhere.change-visit')}
        </button>
        <button type="button" className="quiet-button" {...button('report')}>
          {t('elsewhere.note-report')}
        </button>
      </p>
      {open === 'change' && <ChangeForm visit={visit} onClose={() => close('change')} />}
      {open === 'report' && <ReportForm visit={visit} onClose={() => close('report')} />}
    </section>
  )
}

interface VisitFormProps {
  readonly visit: InstitutionVisit
  readonly onClose: () => void
}

function ChangeForm({ visit, onClose }: VisitFormProps) {
  const { t } = useTexts()
  const { withdrawalId, intendedUse, agreement, plantHealth } = visit
  const form = useCardForm({
    draftName: `institution/${withdrawalId}`,
    empty: { askedOn: visit.askedOn ?? '', intendedUse, agreement, plantHealth, sentOn: visit.sentOn ?? '' },
    writes: 'institution.change',
    onClose,
  })
  return (
    <CardForm
      title={t('elsewhere.change-visit')}
      sendWord={t('elsewhere.note-visit')}
      {...form.sending({ withdrawalId, ...institutionOf(form.typed) })}
    >
      <InstitutionFields typed={form.typed} onChange={form.change} problem={form.problem} />
    </CardForm>
  )
}

function ReportForm({ visit: { withdrawalId }, onClose }: VisitFormProps) {
  const { t } = useTexts()
  const form = useCardForm({
    draftName: `institution-report/${withdrawalId}`,
    empty: { on: '', note: '' },
    writes: 'institution.record-report',
    onClose,
  })
  return (
    <CardForm
      title={t('elsewhere.note-report')}
      sendWord={t('elsewhere.write-report')}
      {...form.sending({ withdrawalId, on: form.dayOf('on'), note: form.typed.note })}
    >
      {form.textField('note', t('elsewhere.what-they-said'), { long: true })}
      {form.dayField('on')}
    </CardForm>
  )
}
