import { useRead } from '../../shared/client/use-read.ts'
import { useFormat } from '../../shared/format/use-format.ts'
import { SelectField } from '../../shared/table-form/select-field.tsx'
import { firstChoices } from './first-choices.ts'
import type { ReadList } from './use-list.ts'

type Question = ReadList['questions'][number]

interface ListQuestionsProps {
  readonly read: ReadList
  readonly onAnswer: (answers: Record<string, string>) => void
}

/** What only the keeper knows, each asked once however many rows wait for it. */
export function ListQuestions({ read, onAnswer }: ListQuestionsProps) {
  const format = useFormat()
  const crops = useRead('crop.list', {})
  if (read.questions.length === 0) return null
  const all = crops.data?.crops ?? []
  const likeliest = firstChoices(read.questions)
  return (
    <section aria-labelledby="list-questions">
      <h2 id="list-questions">
        {read.openQuestions === 0
          ? 'What you answered'
          : `To be answered: ${format.number(read.openQuestions)}`}
      </h2>
      {Object.keys(likeliest).length > 1 && (
        <p>
          <button type="button" className="quiet-button" onClick={() => onAnswer(likeliest)}>
            Take the first choice, where it leaves no row out
          </button>
        </p>
      )}
      <ol className="stack-3">
        {read.questions.map((question) => (
          <li key={question.id}>
            <SelectField
              label={`${question.sentence} ${waiting(question, format.number)}`}
              size="record"
              value={question.answered ?? ''}
              options={optionsOf(question, all)}
              onChange={(value) => onAnswer({ [question.id]: value })}
            />
          </li>
        ))}
      </ol>
    </section>
  )
}

function waiting({ rows, firstRow }: Question, number: (value: number) => string): string {
  return rows === 1 ? `(row ${firstRow})` : `(${number(rows)} rows, the first is ${firstRow})`
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
  return [{ value: '', label: 'choose…' }, ...likely, ...others]
}
