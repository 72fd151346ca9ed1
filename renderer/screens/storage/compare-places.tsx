import { useState } from 'react'
import type { StoredPlace } from '../../../db/contract/storage-operations.ts'
import { useRead } from '../../shared/client/use-read.ts'
import { useFormat } from '../../shared/format/use-format.ts'
import { useTexts } from '../../shared/format/use-texts.ts'
import { Card } from '../../shared/panes/card.tsx'
import { ProblemText } from '../../shared/parts/problem-text.tsx'
import { RowTable } from '../../shared/parts/row-table.tsx'
import { TickList } from '../../shared/parts/tick-list.tsx'

const MOST = 6

/** Candidate places side by side, over the seasons that were measured in each. */
export function ComparePlaces({ places }: { readonly places: readonly StoredPlace[] }) {
  const format = useFormat()
  const { t } = useTexts()
  const rounded = (value: number) => format.number(Math.round(10 * value) / 10).replace('-', '−')
  const measured = places.filter(({ placeId, readingsFrom }) => readingsFrom?.placeId === placeId)
  const [ticked, setTicked] = useState<readonly number[]>(() =>
    measured.slice(0, MOST).map(({ placeId }) => placeId),
  )
  const compared = useRead('storage.compare', ticked.length < 2 ? null : { placeIds: [...ticked] }, {
    keepLast: true,
  })
  return (
    <Card className="card" name={t('storage.places-compared')}>
      <header className="card-head">
        <h2 tabIndex={-1}>{t('storage.places-compared')}</h2>
        <p>{t('storage.compare-aim')}</p>
      </header>
      {measured.length < 2 ? (
        <p className="pane-part">{t('storage.compare-how')}</p>
      ) : (
        <TickList
          className="pane-part store-ticks"
          legend={t('storage.compare-which')}
          items={measured.map(({ placeId, path }) => ({ id: placeId, words: path }))}
          ticked={ticked}
          onChange={setTicked}
          most={MOST}
        />
      )}
      {compared.error !== null && <ProblemText problem={compared.error.problem} />}
      {ticked.length >= 2 && compared.data !== undefined && (
        <section className="pane-part" aria-label={t('storage.side-by-side')}>
          <p className="strong" role="status">
            {compared.data.words}
          </p>
          <RowTable
            label={t('storage.places-side-by-side')}
            rowHeads
            rows={compared.data.places.flatMap(({ placeId, path, seasons }) =>
              seasons.map((season) => ({ ...season, placeId, path })),
            )}
            keyOf={({ placeId, months }) => `${placeId} ${months}`}
            columns={[
              [t('storage.place'), ({ path }) => path],
              [t('storage.season'), ({ months }) => months],
              [
                '°C',
                ({ sum }) =>
                  t('storage.mean-and-span', {
                    mean: rounded(sum.mean),
                    lowest: rounded(sum.lowest),
                    highest: rounded(sum.highest),
                  }),
                'number',
              ],
              [
                t('storage.humidity-percent'),
                ({ sum }) => (sum.meanHumidity === null ? t('storage.not-read') : rounded(sum.meanHumidity)),
                'number',
              ],
              ['°F + %', ({ sum }) => (sum.meanSum === null ? '' : Math.round(sum.meanSum)), 'number'],
              [
                t('storage.too-warm-or-damp'),
                ({ sum }) =>
                  sum.shareOutside === null || sum.meanSum === null ? '' : format.percent(sum.shareOutside),
                'number',
              ],
            ]}
          />
          <p className="soft">{t('storage.compare-why')}</p>
        </section>
      )}
    </Card>
  )
}
