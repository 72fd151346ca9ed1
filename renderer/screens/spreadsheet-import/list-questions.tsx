import { useRead } from '../../shared/client/use-read.ts'
import { useTexts } from '../../shared/format/use-texts.ts'
import { SelectField } from '../../shared/table-form/fields.tsx'
import { firstChoices } from './first-choices.ts'
import type { ReadList } from './use-list.ts'

type Question = ReadList['questions'][number]

interface ListQuestionsProps {
  readonly read: ReadList
  readonly onAnswer: (answers: Record<string, string>) => void
}

/** What only the keeper knows, each asked once however many rows wait for it. */
export function ListQuestions({ read, onAnswer }: ListQuestionsProps) {
  const { t } = useTexts()
  const crops = useRead('crop.list', {})
  if (read.questions.length === 0) return null
  const all = crops.data?.crops ?? []
  const likeliest = firstChoices(read.questions)
  const rowsOf = ({ rows, firstRow }: Question) =>
    rows === 1
      ? t('list.row', { row: String(firstRow) })
      : t('list.rows-from', { rows, first: String(firstRow) })
  return (
    <section aria-labelledby="list-questions">
      <h2 id="list-questions">
        {read.openQuestions === 0 ? t('list.answered') : t('list.questions', { open: read.openQuestions })}
      </h2>
      {Object.keys(likeliest).length > 1 && (
        <p>
          <button type="button" className="quiet-button" onClick={() => onAnswer(likeliest)}>
            {t('list.take-first')}
          </button>
        </p>
      )}
      <ol className="stack-3">
        {read.questions.map((question) => (
          <li key={question.id}>
            <SelectField
              label={`${question.sentence} (${rowsOf(question)})`}
              value={question.answered ?? ''}
              options={[{ value: '', label: t('list.choose') }, ...optionsOf(question, all)]}
              onChange={(value) => onAnswer({ [question.id]: value })}
            />
          </li>
        ))}
      </ol>
    </section>
  )
}

function optionsOf(
  { about, choices }: Question,
  crops: readonly { readonly cropId: string; readonly commonName: string }[],
): { value: string; label: string }[] {
  const likely = choices.map(({ value, words }) => ({ value, label: words }))
  const listed = new Set(likely.map(({ value }) => value))
  const others =
    about === 'crop'
      ? crops
          .map(({ cropId, commonName }) => ({ value: `crop:${cropId}`, label: commonName }))
          .filter(({ value }) => !listed.has(value))
      : []
  return [...likely, ...others]
}

/** What can become of a row, what asks for the keeper first. */
const FATES = ['doubtful', 'refused', 'there', 'left-out', 'new'] as const

/** What becomes of each row: how many of each fate, and the first of them with why. */
export function ListFates({ read }: { readonly read: ReadList }) {
  const { t } = useTexts()
  return (
    <section aria-labelledby="list-fates">
      <h2 id="list-fates">{t('list.fates')}</h2>
      {FATES.filter((fate) => read.counts[fate] > 0).map((fate) => {
        const rows = read.rows.filter((row) => row.fate === fate)
        const count = read.counts[fate]
        return (
          <details key={fate} open={fate !== 'new' && count <= 10}>
            <summary>{t(`list.${fate}`, { rows: count })}</summary>
            <ul className="ruled">
              {rows.map(({ row, words: said, because }) => (
                <li key={row}>
                  <span className="number soft">{row}</span> {said}
                  {because !== '' && <span className="caution"> {because}</span>}
                </li>
              ))}
            </ul>
            {count > rows.length && <p className="soft">{t('list.more', { more: count - rows.length })}</p>}
          </details>
        )
      })}
    </section>
  )
}
