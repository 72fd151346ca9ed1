import type { LotRecord } from '../../../db/contract/stock-operations.ts'
import { WITHDRAWAL_PURPOSES } from '../../../db/domain/shared/closed-sets.ts'
import { useWrite } from '../../shared/client/use-write.ts'
import { useFormat } from '../../shared/format/use-format.ts'
import { useTexts } from '../../shared/format/use-texts.ts'
import { ActionButton } from '../../shared/parts/action-button.tsx'
import { ProblemText } from '../../shared/parts/problem-text.tsx'
import { RowTable } from '../../shared/parts/row-table.tsx'

type Line = LotRecord['ledger'][number]

/** The book of the lot: each entry with what was measured and what was left after it. */
export function LotLedger({ lot }: { readonly lot: LotRecord }) {
  const { t } = useTexts()
  const format = useFormat()
  const takeBack = useWrite('entry.undo')
  return (
    <section className="pane-part">
      <h3>{t('shelf.book')}</h3>
      {takeBack.error !== null && <ProblemText problem={takeBack.error.problem} />}
      <RowTable
        className="card-ledger"
        label={t('shelf.book')}
        rows={lot.ledger}
        keyOf={({ movementId }) => movementId}
        rowProps={({ takenBack }) => ({ 'data-taken-back': takenBack })}
        columns={[
          [t('shelf.date'), ({ on }) => format.day(on)],
          [t('shelf.what'), (line) => <What line={line} />],
          [
            t('shelf.change'),
            (line) => <Seeds count={format.change(line.count)} mass={format.mass(line.massMg)} />,
            'number',
          ],
          [
            t('shelf.left'),
            (line) => (
              <Seeds mass={format.mass(line.balanceMassMg)} count={format.number(line.balanceCount)} />
            ),
            'number',
          ],
          [
            <span key="head" className="only-aloud">
              {t('shelf.undo')}
            </span>,
            ({ entryId, undoable, kind, words }) =>
              undoable && (
                <ActionButton
                  className="word-button"
                  off={takeBack.isPending}
                  onClick={() => takeBack.mutate({ entryId })}
                >
                  {t('shelf.undo-entry')}
                  <span className="only-aloud">
                    : {t(`shelf.kind-${kind}`)}, {words}
                  </span>
                </ActionButton>
              ),
          ],
        ]}
      />
    </section>
  )
}

function What({ line }: { readonly line: Line }) {
  const { t } = useTexts()
  const known = WITHDRAWAL_PURPOSES.find((one) => one === line.purpose)
  const purpose = known === undefined ? line.purpose : t(`shelf.purpose-${known}`)
  const how = [line.person, purpose, line.note, line.overridden, t(`shelf.measured-${line.measured}`)].filter(
    (part) => part !== '',
  )
  return (
    <>
      {t(`shelf.kind-${line.kind}`)}
      <span className="own-line soft small">{how.join(' · ')}</span>
      {line.takenBack && <span className="own-line soft small">{t('shelf.entry-undone')}</span>}
    </>
  )
}

function Seeds({ count, mass }: { readonly count: string; readonly mass: string }) {
  return (
    <>
      {count}
      <span className="own-line soft small">{mass}</span>
    </>
  )
}
