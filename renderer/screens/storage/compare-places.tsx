import { useState } from 'react'
import type { StoredPlace } from '../../../db/contract/storage-operations.ts'
import { useRead } from '../../shared/client/use-read.ts'
import type { Format } from '../../shared/format/format.ts'
import { useFormat } from '../../shared/format/use-format.ts'
import { Card } from '../../shared/panes/card.tsx'
import { ProblemText } from '../../shared/parts/problem-text.tsx'

const MOST = 6

/** Candidate places side by side, over the seasons that were measured in each. */
export function ComparePlaces({ places }: { readonly places: readonly StoredPlace[] }) {
  const format = useFormat()
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
        <fieldset className="pane-part store-ticks">
          <legend>Which places</legend>
          {measured.map(({ placeId, path }) => (
            <label key={placeId} className="tick">
              <input
                type="checkbox"
                checked={ticked.includes(placeId)}
                disabled={!ticked.includes(placeId) && ticked.length >= MOST}
                onChange={() =>
                  setTicked(
                    ticked.includes(placeId) ? ticked.filter((id) => id !== placeId) : [...ticked, placeId],
                  )
                }
              />
              {path}
            </label>
          ))}
        </fieldset>
      )}
      {compared.error !== null && <ProblemText problem={compared.error.problem} />}
      {ticked.length >= 2 && compared.data !== undefined && (
        <section className="pane-part" aria-label="Side by side">
          <p className="strong" role="status">
            {compared.data.words}
          </p>
          <table className="plain-table" aria-label="Places side by side">
            <thead>
              <tr>
                <th scope="col">Place</th>
                <th scope="col">Season</th>
                <th scope="col" className="number">
                  °C
                </th>
                <th scope="col" className="number">
                  Humidity, %
                </th>
                <th scope="col" className="number">
                  °F + %
                </th>
                <th scope="col" className="number">
                  Too warm or damp
                </th>
              </tr>
            </thead>
            <tbody>
              {compared.data.places.flatMap(({ placeId, path, seasons }) =>
                seasons.map(({ months, sum }) => (
                  <tr key={`${placeId} ${months}`}>
                    <th scope="row">{path}</th>
                    <td>{months}</td>
                    <td className="number">
                      {rounded(format, sum.mean)} ({rounded(format, sum.lowest)} to{' '}
                      {rounded(format, sum.highest)})
                    </td>
                    <td className="number">
                      {sum.meanHumidity === null ? 'not read' : rounded(format, sum.meanHumidity)}
                    </td>
                    <td className="number">{sum.meanSum === null ? '' : Math.round(sum.meanSum)}</td>
                    <td className="number">
                      {sum.shareOutside === null || sum.meanSum === null
                        ? ''
                        : format.percent(sum.shareOutside)}
                    </td>
                  </tr>
                )),
              )}
            </tbody>
          </table>
          <p className="soft">
            Degrees F and percent of humidity should add up to 100 or less (common practice). The share is
            that of the measured time in which they do not.
          </p>
        </section>
      )}
    </Card>
  )
}

function rounded(format: Format, value: number): string {
  return format.number(Math.round(10 * value) / 10).replace('-', '−')
}
