import { useRead } from '../../shared/client/use-read.ts'
import { useFormat } from '../../shared/format/use-format.ts'
import { capital } from '../../shared/format/words.ts'

/** What the lot is kept in, how moist it was found, and what the places where it lay were like. */
export function LotStorage({ lotId }: { readonly lotId: number }) {
  const format = useFormat()
  const storage = useRead('lot.get-storage', { lotId }).data
  if (storage === undefined) return null
  const { container, moistures, cautions, findings } = storage
  const stays = storage.stays.filter(({ words }) => words !== '')
  const lines = moistures.length + stays.length + cautions.length + findings.length
  if (container === null && lines === 0) return null
  return (
    <section className="pane-part" aria-label="Storage">
      <h3>Storage</h3>
      {cautions.map((caution) => (
        <p key={caution} className="card-cautions">
          {caution}
        </p>
      ))}
      {container !== null && (
        <p>
          {capital(container.words)}, since {format.day(container.since)}
        </p>
      )}
      <ul className="ruled dated">
        {findings.map(({ on, place, words }) => (
          <li key={`${on} ${place} ${words}`}>
            <span className="soft">{format.day(on)}</span>
            <span>
              found on a round, in {place}: {words}
            </span>
          </li>
        ))}
        {moistures.map(({ on, words }) => (
          <li key={`${on} ${words}`}>
            <span className="soft">{format.day(on)}</span>
            <span>moisture {words}</span>
          </li>
        ))}
        {stays.map(({ from, place, words }) => (
          <li key={`${from} ${place}`}>
            <span className="soft">since {format.day(from)}</span>
            <span>
              {place}: {words}
            </span>
          </li>
        ))}
      </ul>
    </section>
  )
}
