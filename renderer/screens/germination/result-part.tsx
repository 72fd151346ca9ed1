import { Link } from 'wouter'
import type { TestRecord } from '../../../db/contract/germination-operations.ts'
import { CATEGORIES } from '../../../db/domain/germination/germination-test.ts'
import { planAddress } from '../../shared/addresses.ts'
import type { Format } from '../../shared/format/format.ts'
import { useFormat } from '../../shared/format/use-format.ts'
import { capital } from '../../shared/format/words.ts'
import { IntervalBar } from './interval-bar.tsx'
import { columnKey } from './typed-counts.ts'

/** What the counts come to, in plain words and by replicate. */
export function ResultPart({ test }: { readonly test: TestRecord }) {
  const format = useFormat()
  const { result, state } = test
  if (result === null) return null
  const [low, high] = result.wilson
  if (state === 'under-way' && result.unsorted > 0) {
    return (
      <section className="pane-part" aria-label="What it comes to">
        <h3>What it comes to so far</h3>
        <p className="lead">{capital(result.words)}.</p>
      </section>
    )
  }
  return (
    <section className="pane-part" aria-label="What it comes to">
      <h3>{state === 'under-way' ? 'What it comes to so far' : 'What it comes to'}</h3>
      <p className="lead">{capital(result.words)}.</p>
      <IntervalBar
        share={result.germinated / result.tested}
        low={low}
        high={high}
        threshold={result.threshold}
        words={result.words}
      />
      {result.choiceWords !== '' && <p>{result.choiceWords}</p>}
      <p className={result.tolerance.kind === 'outside' ? 'note caution strong' : 'soft'}>
        {result.tolerance.words}{' '}
        {result.tolerance.kind === 'outside' && state === 'finished' && (
          <Link href={planAddress(test.lotId)}>Lay it out again</Link>
        )}
      </p>
      {result.speed !== null && <p>{result.speed.words}</p>}
      <ByReplicate test={test} format={format} />
      <details className="more">
        <summary>How this is worked out</summary>
        <p>
          Of {result.tested} laid out {result.germinated} count as alive
          {result.unsorted === 0 ? '' : `; ${result.unsorted} that nobody sorted count as not germinated`}. 95
          % intervals: {intervalInWords(result.wilson, format)} after Wilson (1927),{' '}
          {intervalInWords(result.exact, format)} after Clopper and Pearson (1934), which never promises too
          much. The chance that at least {format.percent(result.threshold)} of the lot are alive is{' '}
          {chanceInWords(result.chanceAbove, format)},{' '}
          {result.chanceFrom === 'forecast'
            ? 'by its forecast: all its tests, its age and how it was kept'
            : 'every part having been held equally likely before the test'}
          .
        </p>
      </details>
    </section>
  )
}

function intervalInWords([low, high]: readonly [number, number], format: Format): string {
  return `${format.percent(low)} to ${format.percent(high)}`
}

function chanceInWords(chance: number, format: Format): string {
  if (chance > 0.99) return `over ${format.percent(0.99)}`
  return chance < 0.01 ? `under ${format.percent(0.01)}` : format.percent(chance)
}

function ByReplicate({ test, format }: { readonly test: TestRecord; readonly format: Format }) {
  const { result, replicates } = test
  if (result === null) return null
  const shown = CATEGORIES.filter((category) => category === 'normal' || result.tally[category] > 0)
  return (
    <table className="plain-table germ-table" aria-label="What became of the seeds, replicate by replicate">
      <thead>
        <tr>
          <th scope="col">Of</th>
          {replicates.length > 1 &&
            replicates.map(({ sown }, index) => (
              <th key={columnKey(index)} scope="col" className="number">
                {format.number(sown)}
              </th>
            ))}
          <th scope="col" className="number">
            all {format.number(test.sown)}
          </th>
          <th scope="col" className="number">
            part
          </th>
        </tr>
      </thead>
      <tbody>
        {shown.map((category) => (
          <tr key={category}>
            <th scope="row">{category}</th>
            {replicates.length > 1 &&
              replicates.map(({ tally }, index) => (
                <td key={columnKey(index)} className="number">
                  {format.number(tally[category])}
                </td>
              ))}
            <td className="number">{format.number(result.tally[category])}</td>
            <td className="number">{format.percent(result.tally[category] / test.sown)}</td>
          </tr>
        ))}
      </tbody>
    </table>
  )
}
