import type { LotForecast } from '../../../../db/contract/care-operations.ts'
import { useRead } from '../../../shared/client/use-read.ts'
import { useFormat } from '../../../shared/format/use-format.ts'
import { capital } from '../../../shared/format/words.ts'
import { ProblemText } from '../../../shared/parts/problem-text.tsx'
import { RowTable } from '../../../shared/parts/row-table.tsx'
import { ViabilityCurve } from './viability-curve.tsx'

/** How alive the lot is thought to be, until when, how sure that is, and what moving it would bring. */
export function LotOutlook({ lotId }: { readonly lotId: number }) {
  const { data, error } = useRead('forecast.get', { lotId }, { keepLast: true })
  if (data === undefined && error === null) return null
  return (
    <section className="pane-part" aria-labelledby="outlook">
      <h3 id="outlook">Will it still sprout</h3>
      {error !== null && <ProblemText problem={error.problem} />}
      {data?.kind === 'refused' && <p>{data.because}</p>}
      {data?.kind === 'forecast' && <Outlook forecast={data} />}
    </section>
  )
}

function Outlook({ forecast }: { readonly forecast: LotForecast }) {
  const format = useFormat()
  const alive = `${capital(forecast.aliveWords)} on ${format.day(forecast.on)}`
  const crossing = `It ${forecast.crossingWords}`
  return (
    <>
      <p className="strong">{alive}.</p>
      <p>{crossing}.</p>
      <ViabilityCurve forecast={forecast} reading={`${alive}. ${crossing}. ${testsRead(forecast, format)}`} />
      <p className="soft small">
        Line and band: the part alive, nine times in ten inside the band. Dots: tests with their 95 %
        interval. Ruled: the threshold, thick where the lot crosses it.
      </p>
      <ul className="bullets">
        {forecast.howSure.map((sentence) => (
          <li key={sentence}>{format.sentence(sentence)}</li>
        ))}
      </ul>
      <Moving forecast={forecast} />
      <details className="more">
        <summary>Where the figures come from</summary>
        <p>
          {capital(forecast.basis.words)}. Source: {forecast.basis.source} ({forecast.basis.confidence}
          {forecast.basis.note !== '' && `; ${forecast.basis.note}`}).
        </p>
      </details>
    </>
  )
}

function testsRead({ tests }: LotForecast, format: ReturnType<typeof useFormat>): string {
  if (tests.length === 0) return 'No tests.'
  return tests
    .map(({ on, sprouted, tested }) => `Tested ${format.day(on)}: ${sprouted} of ${tested} sprouted.`)
    .join(' ')
}

function Moving({ forecast }: { readonly forecast: LotForecast }) {
  return (
    <details className="more">
      <summary>What would it bring to move it?</summary>
      <RowTable
        label={`Until it is below ${forecast.thresholdWords}, place by place`}
        rows={forecast.places}
        keyOf={({ placeId }) => placeId ?? 'here'}
        columns={[
          ['Place', ({ place }) => place],
          [
            `Until below ${forecast.thresholdWords}`,
            ({ words, caution }) => (
              <>
                {words}
                {caution !== '' && <span className="own-line caution">{caution}</span>}
              </>
            ),
          ],
        ]}
      />
    </details>
  )
}
