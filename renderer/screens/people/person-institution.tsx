import { useRead } from '../../shared/client/use-read.ts'
import { useTexts } from '../../shared/format/use-texts.ts'
import { InstitutionVisits } from '../../shared/institutions/institution-visits.tsx'

/** What an institution got and what is open of it; nothing on the card of anybody else. */
export function PersonInstitution({ personId }: { readonly personId: number }) {
  const { t } = useTexts()
  const visits = useRead('institution.list', { personId, limit: 200 }).data?.visits ?? []
  if (visits.length === 0) return null
  return (
    <section className="person-part" aria-label={t('elsewhere.institutions')}>
      <h3>{t('elsewhere.institutions')}</h3>
      <InstitutionVisits visits={visits} />
    </section>
  )
}
