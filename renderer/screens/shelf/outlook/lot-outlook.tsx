import type { LotForecast } from '../../../../db/contract/care-operations.ts'
import { type Message, message } from '../../../../db/messages/message.ts'
import { useRead } from '../../../shared/client/use-read.ts'
import { useTexts } from '../../../shared/format/use-texts.ts'
import { capital } from '../../../shared/format/words.ts'
import { ProblemText } from '../../../shared/parts/problem-text.tsx'
import { RowTable } from '../../../shared/parts/row-table.tsx'
import { ViabilityCurve } from './viability-curve.tsx'

/** How alive the lot is thought to be, until when, how sure that is, and what moving it would bring. */
export function LotOutlook({ lotId }: { readonly lotId: number }) {
  const { t } = useTexts()
  const { data, error } = useRead('forecast.get', { lotId }, { keepLast: true })
  if (data === undefined && error === null) return null
  return (
    <section className="pane-part" aria-labelledby="outlook">
      <h3 id="outlook">{t('forecast.title')}</h3>
      {error !== null && <ProblemText problem={error.problem} />}
      {data?.kind === 'refused' && <p>{data.because}</p>}
      {data?.kind === 'forecast' && <Outlook forecast={data} />}
    </section>
  )
}

function Outlook({ forecast }: { readonly forecast: LotForecast }) {
  const { say, t } = useTexts()
  const { aliveWords, crossingWords, basis } = forecast
  const reading = [aliveWords, crossingWords, ...testsTold(forecast).map(say)].join(' ')
  return (
    <>
      <p className="strong">{aliveWords}</p>
      <p>{crossingWords}</p>
      <ViabilityCurve forecast={forecast} reading={reading} />
      <p className="soft small">{t('forecast.legend')}</p>
      <ul className="bullets">
        {forecast.howSure.map((sentence) => (
          <li key={sentence}>{sentence}</li>
        ))}
      </ul>
      <Moving forecast={forecast} />
      <details className="more">
        <summary>{t('forecast.figures-from')}</summary>
        <p>
          {t('forecast.source', {
            basis: capital(basis.words),
            source: basis.source,
            confidence: basis.confidence,
            note: basis.note || 'none',
          })}
        </p>
      </details>
    </>
  )
}

function testsTold({ tests }: LotForecast): Message[] {
  if (tests.length === 0) return [message('forecast.no-tests')]
  return tests.map(({ on, sprouted, tested }) =>
    message('forecast.tested', { on: { day: on }, sprouted, tested }),
  )
}

function Moving({ forecast }: { readonly forecast: LotForecast }) {
  const { t } = useTexts()
  const threshold = forecast.thresholdWords
  return (
    <details className="more">
      <summary>{t('forecast.elsewhere')}</summary>
      <RowTable
        label={t('forecast.until-below-by-place', { threshold })}
        rows={forecast.places}
        keyOf={({ placeId }) => placeId ?? 'here'}
        columns={[
          [t('forecast.place'), ({ place }) => place],
          [
            t('forecast.until-below', { threshold }),
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
