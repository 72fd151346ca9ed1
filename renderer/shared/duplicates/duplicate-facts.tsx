import type { Duplicate } from '../../../db/contract/elsewhere-operations.ts'
import { useFormat } from '../format/use-format.ts'
import { useTexts } from '../format/use-texts.ts'
import { FactList } from '../parts/fact-list.tsx'

/** What is due of a safety duplicate, who holds it on what terms, and how alive it was at its last test. */
export function DuplicateFacts({ duplicate }: { readonly duplicate: Duplicate }) {
  const { t } = useTexts()
  const format = useFormat()
  const { quantity, holder, since, lastTest, due } = duplicate
  const day = (on: string | null) => (on === null ? '' : format.day(on))
  const test =
    lastTest === null
      ? t('elsewhere.never-tested')
      : t('elsewhere.test', {
          sprouted: lastTest.sprouted,
          tested: lastTest.tested,
          on: { day: lastTest.on },
        })
  return (
    <>
      {due.map(({ matter, words }) => (
        <p key={matter} className="caution">
          {words}
        </p>
      ))}
      <FactList
        facts={[
          {
            name: t('elsewhere.holder'),
            value: t('elsewhere.holds-since', { holder, since: { day: since } }),
          },
          { name: t('elsewhere.amount'), value: quantity.words },
          { name: t('elsewhere.contact'), value: duplicate.contact },
          { name: t('elsewhere.agreement'), value: duplicate.agreement || t('elsewhere.none-noted') },
          { name: t('elsewhere.agreement-ends'), value: day(duplicate.agreementEnds) },
          { name: t('elsewhere.conditions'), value: duplicate.conditions },
          { name: t('elsewhere.last-test'), value: test },
          { name: t('elsewhere.next-look'), value: day(duplicate.nextLook) },
        ]}
      />
    </>
  )
}
