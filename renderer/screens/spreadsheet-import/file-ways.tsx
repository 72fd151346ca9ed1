import { useTexts } from '../../shared/format/use-texts.ts'
import { SelectField } from '../../shared/table-form/fields.tsx'
import type { ListInput, ReadList } from './use-list.ts'

type Choices = ListInput['choices']

interface FileWaysProps {
  readonly read: ReadList
  readonly onChoose: (choices: Choices) => void
}

const ENCODINGS = ['utf-8', 'windows-1252', 'macintosh', 'utf-16le', 'utf-16be'] as const
const DELIMITERS = [
  { value: ',', name: 'commas' },
  { value: ';', name: 'semicolons' },
  { value: '\t', name: 'tabs' },
  { value: '|', name: 'bars' },
] as const

/** How the file itself was read, to be put right where it was guessed wrongly. */
export function FileWays({ read, onChoose }: FileWaysProps) {
  const { t } = useTexts()
  const { sheet, sheets, encoding, delimiter, headingRow } = read
  // A choice about the file makes other columns of it: what was said of them falls.
  const anew = ({ ...choices }: Choices) => onChoose({ columns: undefined, ...choices })
  const rows = Array.from({ length: Math.max(6, headingRow + 2) }, (_, index) => String(index))
  return (
    <section aria-labelledby="list-file">
      <h2 id="list-file">{t('list.understood')}</h2>
      <ul className="bullets">
        {read.understood.map((sentence) => (
          <li key={sentence}>{sentence}</li>
        ))}
      </ul>
      <details>
        <summary>{t('list.wrong')}</summary>
        <div className="list-columns fields">
          {sheet !== null && sheets.length > 1 && (
            <SelectField
              label={t('list.sheet')}
              value={sheet}
              options={sheets.map((name) => ({ value: name, label: name }))}
              onChange={(chosen) => anew({ sheet: chosen })}
            />
          )}
          {encoding !== null && (
            <SelectField
              label={t('list.encoding')}
              value={encoding}
              options={ENCODINGS.map((name) => ({ value: name, label: name }))}
              onChange={(chosen) => anew({ encoding: chosen })}
            />
          )}
          {delimiter !== null && (
            <SelectField
              label={t('list.delimiter')}
              value={delimiter}
              options={DELIMITERS.map(({ value, name }) => ({ value, label: t(`list.${name}`) }))}
              onChange={(chosen) => anew({ delimiter: chosen })}
            />
          )}
          <SelectField
            label={t('list.headings-in')}
            value={String(headingRow)}
            options={[
              { value: '-1', label: t('list.no-row') },
              ...rows.map((row) => ({ value: row, label: t('list.row', { row: String(Number(row) + 1) }) })),
            ]}
            onChange={(chosen) => anew({ headingRow: Number(chosen) })}
          />
        </div>
      </details>
    </section>
  )
}

interface ListColumnsProps {
  readonly read: ReadList
  readonly onChoose: (columns: string[]) => void
}

/** What each column holds: guessed, and put right by the keeper once. */
export function ListColumns({ read, onChoose }: ListColumnsProps) {
  const { t } = useTexts()
  const options = read.fields.map(({ use, words }) => ({ value: use, label: words }))
  return (
    <section aria-labelledby="list-columns">
      <h2 id="list-columns">{t('list.columns')}</h2>
      <ol className="list-columns fields">
        {read.columns.map(({ heading, use, sample }, index) => (
          // biome-ignore lint/suspicious/noArrayIndexKey: a column is known by its place alone
          <li key={index}>
            <SelectField
              label={heading || t('list.column', { column: index + 1 })}
              value={use}
              options={options}
              words={sample.length === 0 ? t('list.empty') : sample.join(' · ')}
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
