import { useFormat } from '../../shared/format/use-format.ts'
import type { ReadList } from './use-list.ts'

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
