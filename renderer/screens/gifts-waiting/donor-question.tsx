import { Link } from 'wouter'
import type { WaitingGift } from '../../../db/contract/intake-operations.ts'
import { findAddress } from '../../shared/addresses.ts'
import { useRead } from '../../shared/client/use-read.ts'
import { useTexts } from '../../shared/format/use-texts.ts'
import { PEOPLE } from '../../shared/table-form/person-fields.tsx'
import { SuggestField } from '../../shared/table-form/suggest-field.tsx'
import { outcomeOf } from './gift-words.ts'

/** A donor who asks, while their name is typed. */
export interface Asking {
  readonly text: string
  readonly personId: number | null
}

interface DonorQuestionProps {
  readonly asking: Asking
  readonly onChange: (asking: Asking) => void
}

/** The donor's later question: 'what became of it?'. */
export function DonorQuestion({ asking, onChange }: DonorQuestionProps) {
  const { t } = useTexts()
  return (
    <SuggestField
      label={t('gifts.ask')}
      text={asking.text}
      chosen={asking.personId !== null}
      onText={(text) => onChange({ text, personId: null })}
      source={PEOPLE}
      onPick={({ personId, name }) => onChange({ text: name, personId })}
      nothingFound={(typed) => t('gifts.ask-nobody', { name: typed })}
      placeholder={t('gifts.ask-placeholder')}
    />
  )
}

interface DonorAnswerProps {
  readonly name: string
  readonly personId: number
  readonly gifts: readonly WaitingGift[]
}

/** What a donor's gifts came to: those that waited, and those that were taken in at the table. */
export function DonorAnswer({ name, personId, gifts }: DonorAnswerProps) {
  const { t } = useTexts()
  const gave = useRead('person.get', { personId }).data?.gave ?? []
  const waited = new Set(gifts.map(({ accessionNumber }) => accessionNumber))
  const atOnce = gave.filter(({ number }) => !waited.has(number))
  return (
    <section className="stack-2" aria-label={t('gifts.at-table', { name })}>
      <p role="status">{t('gifts.outcome-of', { name, outcome: outcomeOf(gifts, atOnce.length) })}</p>
      <ul className="pane-rows ruled">
        {atOnce.map(({ accessionId, number, variety, receivedOn }) => (
          <li key={accessionId} className="stack-1">
            <p className="strong">
              <Link href={findAddress(number)}>{number}</Link> {variety}
            </p>
            <p className="soft">{t('gifts.taken-in-on', { day: { day: receivedOn } })}</p>
          </li>
        ))}
      </ul>
    </section>
  )
}
