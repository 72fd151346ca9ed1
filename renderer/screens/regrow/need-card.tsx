import { Fragment } from 'react'
import { Link } from 'wouter'
import type { NeedRecord } from '../../../db/contract/regeneration-operations.ts'
import { chanceInWords } from '../../../db/domain/needs/assurance.ts'
import { lotAddress } from '../../shared/addresses.ts'
import { useRead } from '../../shared/client/use-read.ts'
import { useFormat } from '../../shared/format/use-format.ts'
import { capital, plantsInWords } from '../../shared/format/words.ts'
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
  const read = useRead('regeneration.get', { accessionId })
  if (read.error !== null) return <ProblemText problem={read.error.problem} />
  const need = read.data
  if (need === undefined) return <p className="soft">Opening…</p>
  return (
    <Card className="card" name={need.variety}>
      <header className="card-head need-head">
        <h2 tabIndex={-1}>{need.variety}</h2>
        <p>
          {need.crop} · {need.accessionNumber} · number {need.rank} of the list
        </p>
      </header>
      <section className="pane-part" aria-label="How it stands">
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
        <p>{need.why}</p>
        {need.growOut !== null && (
          <p>
            <strong>{need.growOut.failed ? 'Its growing failed' : 'It is being grown'}</strong>{' '}
            {need.growOut.words}.
          </p>
        )}
        <label className="need-tick tick strong">
          <input type="checkbox" checked={chosen} onChange={onTick} />
          Grow it this season
        </label>
      </section>
      {need.rescue.length > 0 && (
        <section className="pane-part need-rescue" aria-label="Rescue">
          <h3>{need.sow === null ? 'None to sow' : 'The last seeds'}</h3>
          <ol className="bullets">
            {need.rescue.map((line) => (
              <li key={line}>{line}</li>
            ))}
          </ol>
          {need.sow !== null && (
            <p className="soft">
              Treated seed is poisonous: read the cautions on its card before you touch it.
            </p>
          )}
        </section>
      )}
      <SeasonsAhead need={need} nextYear={nextYear} />
      <Arithmetic need={need} />
      <section className="pane-part" aria-label="Its generations">
        <h3>Its generations</h3>
        {need.generations.length > 0 && (
          <ul className="bullets">
            {need.generations.map(({ lotNumber, generation, plants }) => (
              <li key={generation}>
                {generation}: {lotNumber}, {plants === null ? 'plants not noted' : plantsInWords(plants)}
              </li>
            ))}
          </ul>
        )}
        <p>{need.drift}</p>
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
  const { sow } = need
  return (
    <section className="pane-part" aria-label="How this is worked out">
      <h3>How this is worked out</h3>
      <FactList
        facts={[
          { name: 'Plants for one regrowing', value: `${format.number(need.plants)}: ${need.plantsFrom}` },
          { name: 'Regrowings it still holds', value: format.number(need.regrowingsLeft) },
          {
            name: 'To sow this season',
            value: sow && (
              <>
                {sow.lots.map(({ lotId, lotNumber, seeds }, index) => (
                  <Fragment key={lotId}>
                    {index > 0 && ' and '}
                    {format.number(seeds)} of <Link href={lotAddress(lotId)}>{lotNumber}</Link>
                  </Fragment>
                ))}
                {sow.enough
                  ? `: all plants come up ${chanceInWords(sow.chance)}`
                  : ': all that may be risked'}
              </>
            ),
          },
          {
            name: 'Held elsewhere',
            value: need.heldElsewhere.length === 0 ? 'nowhere that is known' : need.heldElsewhere.join('; '),
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
      <p className="soft">{capital(need.stock.viabilityNote)}</p>
    </section>
  )
}
