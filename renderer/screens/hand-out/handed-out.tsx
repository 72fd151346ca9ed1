import type { Value } from '../../../db/contract/contract.ts'
import { useTexts } from '../../shared/format/use-texts.ts'
import { StateMark } from '../../shared/state-mark/state-mark.tsx'
import type { LotLine } from '../../shared/table-form/lot-line.ts'

/** A visit that was saved: what is left of each of its lots. */
export interface HandedOut {
  /** '' where nobody was named. */
  readonly member: string
  readonly lines: Value<'withdrawal.record'>['lines']
  readonly listed: readonly LotLine[]
}

/** What the last visit left in each lot, until the next one is listed. */
export function HandedOutList({ last }: { readonly last: HandedOut }) {
  const { t } = useTexts()
  const { member } = last
  return (
    <section className="handed-out stack-2" aria-label={t('hand-out.what-is-left')}>
      <h3>{member === '' ? t('hand-out.left-after-last') : t('hand-out.left-after', { member })}</h3>
      <ul className="stack-3">
        {last.lines.map((line) => (
          <li key={line.lotId}>
            <p>
              <strong>{last.listed.find(({ lot }) => lot?.lotId === line.lotId)?.lot?.variety}</strong>{' '}
              {line.lotNumber}: {line.left.words}
            </p>
            <p className="row">
              <StateMark mark={line.state} /> <span className="soft">{line.sentence}</span>
            </p>
          </li>
        ))}
      </ul>
    </section>
  )
}
