import type { ReactNode } from 'react'
import { Link } from 'wouter'
import type { LotRecord } from '../../../db/contract/stock-operations.ts'
import { message } from '../../../db/messages/message.ts'
import { planAddress, testAddress } from '../../shared/addresses.ts'
import { useRead } from '../../shared/client/use-read.ts'
import { useFormat } from '../../shared/format/use-format.ts'
import { useTexts } from '../../shared/format/use-texts.ts'
import { capital } from '../../shared/format/words.ts'

/** What was measured of the lot: germination, hundred-seed weights, and where it has stood. */
export function LotMeasurements({ lot }: { readonly lot: LotRecord }) {
  return (
    <>
      <Germination lot={lot} />
      <Weights lot={lot} />
      <Places lot={lot} />
    </>
  )
}

function Germination({ lot }: { readonly lot: LotRecord }) {
  const { t } = useTexts()
  const format = useFormat()
  return (
    <section className="pane-part">
      <h3>{t('shelf.germination')}</h3>
      {lot.germination.length === 0 ? (
        <p className="soft">{capital(lot.stock.viabilityNotes.join('; '))}.</p>
      ) : (
        <ul className="ruled dated">
          {lot.germination.map((test) => (
            <li key={test.testId}>
              <Link className="soft" href={testAddress(test.testId)}>
                {format.day(test.testedOn)}
              </Link>
              <span>{test.words}</span>
            </li>
          ))}
        </ul>
      )}
      <UnderWay lotId={lot.lotId} />
      <p>
        <Link href={planAddress(lot.lotId)}>{t('shelf.test-it')}</Link>
      </p>
    </section>
  )
}

/** Tests of the lot that are on the bench now. */
function UnderWay({ lotId }: { readonly lotId: number }) {
  const { pieces } = useTexts()
  const tests = useRead('germination.list', { lotId }).data?.tests ?? []
  return tests.map(({ testId, startedOn, normal, sown }) => (
    <p key={testId}>
      {pieces(
        startedOn === null
          ? message('shelf.test-under-way', { normal, sown })
          : message('shelf.test-under-way-since', { normal, sown, since: { day: startedOn } }),
        {
          link: (words) => (
            <Link key="link" href={testAddress(testId)}>
              {words}
            </Link>
          ),
        },
      )}
    </p>
  ))
}

function Weights({ lot }: { readonly lot: LotRecord }) {
  const { t } = useTexts()
  const format = useFormat()
  return (
    <section className="pane-part">
      <h3>{t('shelf.weights')}</h3>
      <ul className="ruled dated">
        {lot.weights.map((weight) => (
          <Dated key={weight.weightId ?? 'default'} when={format.day(weight.measuredOn)}>
            {weight.words}
            {weight.judgement !== 'not-judged' && (
              <span className="soft">; {t(`shelf.replicates-${weight.judgement}`)}</span>
            )}
          </Dated>
        ))}
        {lot.weights.length === 0 && (
          <li>
            <span className="soft">{t('shelf.crops-usual')}</span>
            <span className="card-default">{lot.weight.words}</span>
          </li>
        )}
      </ul>
    </section>
  )
}

function Places({ lot }: { readonly lot: LotRecord }) {
  const { t } = useTexts()
  const format = useFormat()
  if (lot.placeHistory.length < 2) return null
  return (
    <section className="pane-part">
      <h3>{t('shelf.where-it-stood')}</h3>
      <ul className="ruled dated">
        {lot.placeHistory.map((stood) => (
          <Dated key={`${stood.since} ${stood.place}`} when={format.day(stood.since)}>
            {stood.place}
          </Dated>
        ))}
      </ul>
    </section>
  )
}

/** What the lot is kept in, how moist it was found, and what the places where it lay were like. */
export function LotStorage({ lotId }: { readonly lotId: number }) {
  const { t } = useTexts()
  const format = useFormat()
  const storage = useRead('lot.get-storage', { lotId }).data
  if (storage === undefined) return null
  const { container, moistures, cautions, findings } = storage
  const stays = storage.stays.filter(({ words }) => words !== '')
  const lines = moistures.length + stays.length + cautions.length + findings.length
  if (container === null && lines === 0) return null
  return (
    <section className="pane-part" aria-label={t('shelf.storage')}>
      <h3>{t('shelf.storage')}</h3>
      {cautions.map((caution) => (
        <p key={caution} className="card-cautions">
          {caution}
        </p>
      ))}
      {container !== null && (
        <p>
          {t('shelf.kept-since', { container: capital(container.words), since: { day: container.since } })}
        </p>
      )}
      <ul className="ruled dated">
        {findings.map(({ on, place, words }) => (
          <Dated key={`${on} ${place} ${words}`} when={format.day(on)}>
            {t('shelf.found-on-round', { place, words })}
          </Dated>
        ))}
        {moistures.map(({ on, words }) => (
          <Dated key={`${on} ${words}`} when={format.day(on)}>
            {t('shelf.moisture-found', { words })}
          </Dated>
        ))}
        {stays.map(({ from, place, words }) => (
          <Dated key={`${from} ${place}`} when={t('shelf.since', { since: { day: from } })}>
            {place}: {words}
          </Dated>
        ))}
      </ul>
    </section>
  )
}

function Dated({ when, children }: { readonly when: string; readonly children: ReactNode }) {
  return (
    <li>
      <span className="soft">{when}</span>
      <span>{children}</span>
    </li>
  )
}
