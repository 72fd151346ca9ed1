import { useMutation } from '@tanstack/react-query'
import type { PersonRecord } from '../../../db/contract/people-operations.ts'
import { LANGUAGES } from '../../../db/messages/languages.ts'
import { useOpenForm } from '../../shared/card-form/use-open-form.ts'
import { call } from '../../shared/client/call.ts'
import { saveFile } from '../../shared/client/save-file.ts'
import { useRead } from '../../shared/client/use-read.ts'
import { useFormat } from '../../shared/format/use-format.ts'
import { useTexts } from '../../shared/format/use-texts.ts'
import { Card } from '../../shared/panes/card.tsx'
import { ActionButton } from '../../shared/parts/action-button.tsx'
import { FactList } from '../../shared/parts/fact-list.tsx'
import { ProblemText } from '../../shared/parts/problem-text.tsx'
import { ErasePerson } from './erase-person.tsx'
import { MergePeople } from './merge-people.tsx'
import { PersonForm } from './person-form.tsx'
import { MergedRecords, PersonHistory } from './person-history.tsx'
import { PersonInstitution } from './person-institution.tsx'

/** The index card of a person. A joined record shows the kept one. */
export function PersonCard({ personId }: { readonly personId: number }) {
  const { t } = useTexts()
  const record = useRead('person.get', { personId })
  const { open, button, close } = useOpenForm<'change' | 'merge' | 'erase'>()
  const held = useMutation({
    mutationFn: () => call('person.export', { personId }),
    onSuccess: ({ fileName, text }) => saveFile(fileName, 'application/json', text),
  })
  if (record.error) return <ProblemText problem={record.error.problem} />
  if (record.data === undefined) return null
  const person = record.data
  return (
    <Card className="card person-card stack-4" name={person.name}>
      <header>
        <h2>{person.name}</h2>
        <p className="soft">
          {[person.town, ...person.roles.map((role) => t(`people.role.${role}`))]
            .filter((part) => part !== '')
            .join(' · ')}
        </p>
      </header>
      <Facts person={person} />
      <p className="buttons">
        <button type="button" className="quiet-button" {...button('change')}>
          {t('people.change')}
        </button>
        <button type="button" className="quiet-button" {...button('merge')}>
          {t('people.join')}
        </button>
        <ActionButton className="quiet-button" off={held.isPending} onClick={() => held.mutate()}>
          {t('people.save-held')}
        </ActionButton>
        <button type="button" className="quiet-button" {...button('erase')}>
          {t('people.erase')}
        </button>
      </p>
      {open === 'change' && (
        <PersonForm key={person.personId} person={person} onClose={() => close('change')} />
      )}
      {open === 'merge' && <MergePeople person={person} onClose={() => close('merge')} />}
      {open === 'erase' && <ErasePerson person={person} onClose={() => close('erase')} />}
      {held.error !== null && <ProblemText problem={held.error.problem} />}
      <MergedRecords person={person} />
      <PersonInstitution personId={person.personId} />
      <PersonHistory person={person} />
    </Card>
  )
}

function Facts({ person }: { readonly person: PersonRecord }) {
  const format = useFormat()
  const { t } = useTexts()
  const { consentOn } = person
  const agreed = consentOn === null ? '' : t('people.agreed-on', { day: { day: consentOn } })
  return (
    <FactList
      facts={[
        { name: t('people.fact.credit-as'), value: person.creditAs || t('people.fact.credit-none') },
        { name: t('people.fact.may-write'), value: person.mayWrite ? agreed : t('people.fact.may-write-no') },
        { name: t('people.fact.email'), value: person.email },
        { name: t('people.fact.phone'), value: person.phone },
        { name: t('people.fact.address'), value: person.address },
        {
          name: t('people.fact.language'),
          value:
            LANGUAGES.find(({ code }) => code === person.language)?.name ?? t('people.fact.language-library'),
        },
        { name: t('people.fact.since'), value: format.day(person.since) },
        { name: t('people.fact.note'), value: person.note },
      ]}
    />
  )
}
