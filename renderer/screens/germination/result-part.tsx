import { scaleLinear } from 'd3-scale'
import { Link } from 'wouter'
import type { TestRecord } from '../../../db/contract/germination-operations.ts'
import { CATEGORIES, type Category } from '../../../db/domain/germination/germination-test.ts'
import { planAddress } from '../../shared/addresses.ts'
import { QUARTERS } from '../../shared/chart/value-ruling.tsx'
import type { Format } from '../../shared/format/format.ts'
import { useFormat } from '../../shared/format/use-format.ts'
import { useTexts } from '../../shared/format/use-texts.ts'
import { capital } from '../../shared/format/words.ts'
import { RowTable } from '../../shared/parts/row-table.tsx'

/** What the counts come to, in plain words and by replicate. */
export function ResultPart({ test }: { readonly test: TestRecord }) {
  const format = useFormat()
  const { t } = useTexts()
  const { result, state } = test
  if (result === null) return null
  const [low, high] = result.wilson
  if (state === 'under-way' && result.unsorted > 0) {
    return (
      <section className="pane-part" aria-label={t('germination.result-title')}>
        <h3>{t('germination.result-so-far')}</h3>
        <p className="lead">{capital(result.words)}.</p>
      </section>
    )
  }
  return (
    <section className="pane-part" aria-label={t('germination.result-title')}>
      <h3>{t(state === 'under-way' ? 'germination.result-so-far' : 'germination.result-title')}</h3>
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
          <Link href={planAddress(test.lotId)}>{t('germination.lay-again')}</Link>
        )}
      </p>
      {result.speed !== null && <p>{result.speed.words}</p>}
      <ByReplicate test={test} format={format} />
      <details className="more">
        <summary>{t('germination.how-worked-out')}</summary>
        <p>{t('germination.how', howOf(result))}</p>
      </details>
    </section>
  )
}

/** The figures of the explanation. */
function howOf(result: NonNullable<TestRecord['result']>) {
  const { tested, germinated, unsorted, wilson, exact, threshold, chanceAbove, chanceFrom } = result
  const bound = chanceAbove > 0.99 ? 'over' : chanceAbove < 0.01 ? 'under' : 'none'
  return {
    tested,
    germinated,
    unsorted,
    wilsonLow: { part: wilson[0] },
    wilsonHigh: { part: wilson[1] },
    exactLow: { part: exact[0] },
    exactHigh: { part: exact[1] },
    threshold: { part: threshold },
    bound,
    chance: { part: Math.min(0.99, Math.max(0.01, chanceAbove)) },
    by: chanceFrom,
  }
}

function ByReplicate({ test, format }: { readonly test: TestRecord; readonly format: Format }) {
  const { t } = useTexts()
  const { result, replicates } = test
  if (result === null) return null
  const ofReplicate = ({ sown, tally }: (typeof replicates)[number]) =>
    [format.number(sown), (category: Category) => format.number(tally[category]), 'number'] as const
  return (
    <RowTable
      className="germ-table"
      label={t('germination.by-replicate')}
      rowHeads
      rows={CATEGORIES.filter((category) => category === 'normal' || result.tally[category] > 0)}
      keyOf={(category) => category}
      columns={[
        [t('germination.of'), (category) => t(`germination.category-${category}`)],
        ...(replicates.length > 1 ? replicates.map(ofReplicate) : []),
        [
          t('germination.all-of', { sown: test.sown }),
          (category) => format.number(result.tally[category]),
          'number',
        ],
        [t('germination.part'), (category) => format.percent(result.tally[category] / test.sown), 'number'],
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
  const { t } = useTexts()
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
        {t('germination.threshold-mark', { threshold: { part: threshold } })}
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
