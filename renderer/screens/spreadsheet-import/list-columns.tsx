import { SelectField } from '../../shared/table-form/select-field.tsx'
import type { ReadList } from './use-list.ts'

interface ListColumnsProps {
  readonly read: ReadList
  readonly onChoose: (columns: string[]) => void
}

/** What each column holds: guessed, and put right by the keeper once. */
export function ListColumns({ read, onChoose }: ListColumnsProps) {
  const options = read.fields.map(({ use, words }) => ({ value: use, label: words }))
  return (
    <section aria-labelledby="list-columns">
      <h2 id="list-columns">What its columns hold</h2>
      <ol className="list-columns fields">
        {read.columns.map(({ heading, use, sample }, index) => (
          // biome-ignore lint/suspicious/noArrayIndexKey: a column is known by its place alone
          <li key={index}>
            <SelectField
              label={heading || `Column ${index + 1}`}
              size="record"
              value={use}
              options={options}
              words={sample.length === 0 ? 'empty' : sample.join(' · ')}
              onChange={(chosen) =>
                onChoose(read.columns.map((column, at) => (at === index ? chosen : column.use)))
              }
            />
          </li>
        ))}
      </ol>
    </section>
  )
}
