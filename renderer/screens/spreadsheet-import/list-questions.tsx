import { useRead } from '../../shared/client/use-read.ts'
import { useFormat } from '../../shared/format/use-format.ts'
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

type Fate = ReadList['rows'][number]['fate']

const FATES: readonly { readonly fate: Fate; readonly words: string }[] = [
  { fate: 'doubtful', words: 'wait for an answer' },
  { fate: 'refused', words: 'cannot come in' },
  { fate: 'there', words: 'are in the book already' },
  { fate: 'left-out', words: 'are left out by your answers' },
  { fate: 'new', words: 'come in' },
]

/** What becomes of each row: how many of each fate, and the first of them with why. */
export function ListFates({ read }: { readonly read: ReadList }) {
  const format = useFormat()
  return (
    <section aria-labelledby="list-fates">
      <h2 id="list-fates">What becomes of its rows</h2>
      {FATES.filter(({ fate }) => read.counts[fate] > 0).map(({ fate, words }) => {
        const rows = read.rows.filter((row) => row.fate === fate)
        const count = read.counts[fate]
        return (
          <details key={fate} open={fate !== 'new' && count <= 10}>
            <summary>
              {format.number(count)} {words}
            </summary>
            <ul className="ruled">
              {rows.map(({ row, words: said, because }) => (
                <li key={row}>
                  <span className="number soft">{row}</span> {said}
                  {because !== '' && <span className="caution"> {because}</span>}
                </li>
              ))}
            </ul>
            {count > rows.length && <p className="soft">and {format.number(count - rows.length)} more.</p>}
          </details>
        )
      })}
    </section>
  )
}
