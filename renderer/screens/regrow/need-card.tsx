import { Fragment } from 'react'
import { Link } from 'wouter'
import type { NeedRecord } from '../../../db/contract/regeneration-operations.ts'
import { timesIn100 } from '../../../db/domain/needs/assurance.ts'
import { message } from '../../../db/messages/message.ts'
import { lotAddress } from '../../shared/addresses.ts'
import { useRead } from '../../shared/client/use-read.ts'
import { useFormat } from '../../shared/format/use-format.ts'
import { useTexts } from '../../shared/format/use-texts.ts'
import { capital } from '../../shared/format/words.ts'
import { Card } from '../../shared/panes/card.tsx'
import { FactList } from '../../shared/parts/fact-list.tsx'
import { ProblemText } from '../../shared/parts/problem-text.tsx'
import { SeedBar } from '../../shared/seed-bar/seed-bar.tsx'
import { StateMark } from '../../shared/state-mark/state-mark.tsx'
import { KeepPart } from './keep-form.tsx'
import { barOf } from './need-list.tsx'
import { SeasonsAhead } from './seasons-ahead.tsx'

interface NeedCardProps {
  readonly accessionId: number
  /** Whether it is ticked to be grown. */
  readonly chosen: boolean
  readonly onTick: () => void
  readonly nextYear: number
}

/** Why an accession stands where it stands, what waiting costs, and what to do. */
export function NeedCard({ accessionId, chosen, onTick, nextYear }: NeedCardProps) {
  const { t, pieces } = useTexts()
  const read = useRead('regeneration.get', { accessionId })
  if (read.error !== null) return <ProblemText problem={read.error.problem} />
  const need = read.data
  if (need === undefined) return <p className="soft">{t('needs.opening')}</p>
  return (
    <Card className="card" name={need.variety}>
      <header className="card-head need-head">
        <h2 tabIndex={-1}>{need.variety}</h2>
        <p>
          {need.crop} · {need.accessionNumber} · {t('needs.rank', { rank: need.rank })}
        </p>
      </header>
      <section className="pane-part" aria-label={t('needs.how-it-stands')}>
        <div className="head-row">
          <p>
            <strong>{capital(need.stock.sentence)}</strong>
          </p>
          <StateMark mark={need.state} />
        </div>
        <SeedBar large {...barOf(need)} />
        {need.stock.reasons.map((reason) => (
          <p key={reason}>{reason}</p>
        ))}
        {need.state !== 'not-kept' && <p>{need.why}</p>}
        {need.growOut !== null && (
          <p>
            {pieces(
              message('needs.grown', {
                failed: need.growOut.failed ? 'yes' : 'no',
                where: need.growOut.words,
              }),
              { strong: (words) => <strong key="strong">{words}</strong> },
            )}
          </p>
        )}
        {need.state !== 'not-kept' && (
          <label className="need-tick tick strong">
            <input type="checkbox" checked={chosen} onChange={onTick} />
            {t('needs.grow-it')}
          </label>
        )}
      </section>
      {need.rescue.length > 0 && (
        <section className="pane-part need-rescue" aria-label={t('needs.rescue-part')}>
          <h3>{need.sow === null ? t('needs.none-to-sow') : t('needs.last-seeds')}</h3>
          <ol className="bullets">
            {need.rescue.map((line) => (
              <li key={line}>{line}</li>
            ))}
          </ol>
          {need.sow !== null && <p className="soft">{t('needs.treated-caution')}</p>}
        </section>
      )}
      {need.outlook.length > 0 && <SeasonsAhead need={need} nextYear={nextYear} />}
      <Arithmetic need={need} />
      <section className="pane-part" aria-label={t('needs.generations')}>
        <h3>{t('needs.generations')}</h3>
        {need.generations.length > 0 && (
          <ul className="bullets">
            {need.generations.map(({ lotNumber, generation, plants }) => (
              <li key={generation}>
                {plants === null
                  ? t('needs.generation-not-noted', { generation, lot: lotNumber })
                  : t('needs.generation', { generation, lot: lotNumber, plants })}
              </li>
            ))}
          </ul>
        )}
        <p>{need.drift.join(' ')}</p>
      </section>
      <KeepPart
        key={`${need.plants} ${need.grade} ${need.regrowings} ${need.assurance} ${need.threshold}`}
        need={need}
      />
    </Card>
  )
}

function Arithmetic({ need }: { readonly need: NeedRecord }) {
  const format = useFormat()
  const { t, pieces } = useTexts()
  const { sow } = need
  return (
    <section className="pane-part" aria-label={t('needs.how-worked-out')}>
      <h3>{t('needs.how-worked-out')}</h3>
      <FactList
        facts={[
          { name: t('needs.plants-for-one'), value: `${format.number(need.plants)}: ${need.plantsFrom}` },
          { name: t('needs.regrowings-left'), value: format.number(need.regrowingsLeft) },
          {
            name: t('needs.to-sow'),
            value: sow && (
              <>
                {sow.lots.map(({ lotId, lotNumber, seeds }, index) => (
                  <Fragment key={lotId}>
                    {index > 0 && ', '}
                    {pieces(message('needs.sow-of-lot', { seeds, lot: lotNumber }), {
                      link: (words) => (
                        <Link key={lotId} href={lotAddress(lotId)}>
                          {words}
                        </Link>
                      ),
                    })}
                  </Fragment>
                ))}
                {': '}
                {sow.enough
                  ? t('needs.all-come-up', { times: timesIn100(sow.chance) })
                  : t('needs.all-at-risk')}
              </>
            ),
          },
          {
            name: t('needs.held-elsewhere'),
            value: need.heldElsewhere.length === 0 ? t('needs.held-nowhere') : need.heldElsewhere.join('; '),
          },
        ]}
      />
      {need.arithmetic.map(({ heading, lines }) => (
        <details key={heading} className="more">
          <summary>{heading}</summary>
          <ul className="bullets">
            {lines.map((line) => (
              <li key={line}>{line}</li>
            ))}
          </ul>
        </details>
      ))}
      <p className="soft">{capital(need.stock.viabilityNotes.join('; '))}</p>
    </section>
  )
}
