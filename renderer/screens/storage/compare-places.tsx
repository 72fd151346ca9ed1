import { useState } from 'react'
import type { StoredPlace } from '../../../db/contract/storage-operations.ts'
import { useRead } from '../../shared/client/use-read.ts'
import { useFormat } from '../../shared/format/use-format.ts'
import { Card } from '../../shared/panes/card.tsx'
import { ProblemText } from '../../shared/parts/problem-text.tsx'
import { RowTable } from '../../shared/parts/row-table.tsx'
import { TickList } from '../../shared/parts/tick-list.tsx'

const MOST = 6

/** Candidate places side by side, over the seasons that were measured in each. */
export function ComparePlaces({ places }: { readonly places: readonly StoredPlace[] }) {
  const format = useFormat()
  const rounded = (value: number) => format.number(Math.round(10 * value) / 10).replace('-', '−')
  const measured = places.filter(({ placeId, readingsFrom }) => readingsFrom?.placeId === placeId)
  const [ticked, setTicked] = useState<readonly number[]>(() =>
    measured.slice(0, MOST).map(({ placeId }) => placeId),
  )
  const compared = useRead('storage.compare', ticked.length < 2 ? null : { placeIds: [...ticked] }, {
    keepLast: true,
  })
  return (
    <Card className="card" name="Places compared">
      <header className="card-head">
        <h2 tabIndex={-1}>Places compared</h2>
        <p>For keeping seed a few years: cool and dry.</p>
      </header>
      {measured.length < 2 ? (
        <p className="pane-part">
          Put a thermometer and a hygrometer in each place for a few weeks and write the readings down. Two
          measured places can be compared.
        </p>
      ) : (
        <TickList
          className="pane-part store-ticks"
          legend="Which places"
          items={measured.map(({ placeId, path }) => ({ id: placeId, words: path }))}
          ticked={ticked}
          onChange={setTicked}
          most={MOST}
        />
      )}
      {compared.error !== null && <ProblemText problem={compared.error.problem} />}
      {ticked.length >= 2 && compared.data !== undefined && (
        <section className="pane-part" aria-label="Side by side">
          <p className="strong" role="status">
            {compared.data.words}
          </p>
          <RowTable
            label="Places side by side"
            rowHeads
            rows={compared.data.places.flatMap(({ placeId, path, seasons }) =>
              seasons.map((season) => ({ ...season, placeId, path })),
            )}
            keyOf={({ placeId, months }) => `${placeId} ${months}`}
            columns={[
              ['Place', ({ path }) => path],
              ['Season', ({ months }) => months],
              [
                '°C',
                ({ sum }) => `${rounded(sum.mean)} (${rounded(sum.lowest)} to ${rounded(sum.highest)})`,
                'number',
              ],
              [
                'Humidity, %',
                ({ sum }) => (sum.meanHumidity === null ? 'not read' : rounded(sum.meanHumidity)),
                'number',
              ],
              ['°F + %', ({ sum }) => (sum.meanSum === null ? '' : Math.round(sum.meanSum)), 'number'],
              [
                'Too warm or damp',
                ({ sum }) =>
                  sum.shareOutside === null || sum.meanSum === null ? '' : format.percent(sum.shareOutside),
                'number',
              ],
            ]}
          />
          <p className="soft">
            Degrees F and percent of humidity should add up to 100 or less (common practice). The share is
            that of the measured time in which they do not.
          </p>
        </section>
      )}
    </Card>
  )
}
