import { scaleLinear } from 'd3-scale'
import { Link } from 'wouter'
import type { TestRecord } from '../../../db/contract/germination-operations.ts'
import { CATEGORIES, type Category } from '../../../db/domain/germination/germination-test.ts'
import { planAddress } from '../../shared/addresses.ts'
import { QUARTERS } from '../../shared/chart/value-ruling.tsx'
import type { Format } from '../../shared/format/format.ts'
import { useFormat } from '../../shared/format/use-format.ts'
import { capital } from '../../shared/format/words.ts'
import { RowTable } from '../../shared/parts/row-table.tsx'

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
  const ofReplicate = ({ sown, tally }: (typeof replicates)[number]) =>
    [format.number(sown), (category: Category) => format.number(tally[category]), 'number'] as const
  return (
    <RowTable
      className="germ-table"
      label="What became of the seeds, replicate by replicate"
      rowHeads
      rows={CATEGORIES.filter((category) => category === 'normal' || result.tally[category] > 0)}
      keyOf={(category) => category}
      columns={[
        ['Of', (category) => category],
        ...(replicates.length > 1 ? replicates.map(ofReplicate) : []),
        [`all ${format.number(test.sown)}`, (category) => format.number(result.tally[category]), 'number'],
        ['part', (category) => format.percent(result.tally[category] / test.sown), 'number'],
      ]}
    />
  )
}

interface IntervalBarProps {
  readonly share: number
  readonly low: number
  readonly high: number
  readonly threshold: number
  /** The same in words. */
  readonly words: string
}

const WIDTH = 560
const EDGE = 16
const at = scaleLinear([0, 1], [EDGE, WIDTH - EDGE])

/** How alive the lot may be: a whisker from low to high, the share found, and the threshold as a ruled line. */
function IntervalBar({ share, low, high, threshold, words }: IntervalBarProps) {
  return (
    <svg className="chart" viewBox={`0 0 ${WIDTH} 58`} role="img" aria-label={words}>
      {QUARTERS.map((part) => (
        <g key={part}>
          <line className="chart-rule" x1={at(part)} x2={at(part)} y1={22} y2={38} />
          <text x={at(part)} y={54} textAnchor="middle">
            {100 * part} %
          </text>
        </g>
      ))}
      <line className="chart-rule" x1={at(0)} x2={at(1)} y1={30} y2={30} />
      <line className="chart-limit" x1={at(threshold)} x2={at(threshold)} y1={14} y2={42} />
      <text x={at(threshold)} y={11} textAnchor={threshold > 0.8 ? 'end' : 'middle'}>
        threshold {Math.round(100 * threshold)} %
      </text>
      <path
        className="interval-whisker"
        d={`M ${at(low)} 24 V 36 M ${at(low)} 30 H ${at(high)} M ${at(high)} 24 V 36`}
      />
      <path
        className="interval-seed"
        d={`M ${at(share)} 22 c 5 4 6 8 4 12 c -1 3 -2 4 -4 4 c -2 0 -3 -1 -4 -4 c -2 -4 -1 -8 4 -12 Z`}
      />
    </svg>
  )
}
