import type { LotRecord } from '../../../db/contract/stock-operations.ts'
import { useWrite } from '../../shared/client/use-write.ts'
import { useFormat } from '../../shared/format/use-format.ts'
import { ActionButton } from '../../shared/parts/action-button.tsx'
import { ProblemText } from '../../shared/parts/problem-text.tsx'
import { RowTable } from '../../shared/parts/row-table.tsx'

type Line = LotRecord['ledger'][number]

const KIND_WORDS: Record<Line['kind'], string> = {
  intake: 'taken in',
  return: 'brought back',
  withdrawal: 'handed out',
  test: 'used for a test',
  discard: 'discarded',
  stocktake: 'stock taken',
  split: 'split',
  join: 'joined',
  recount: 'recalculated with a new weight',
  reversal: 'taken back',
}

const PURPOSE_WORDS: Readonly<Record<string, string>> = {
  'to-grow': 'to grow',
  'to-return': 'to grow and return',
  'grow-out': 'grow-out for the library',
  'safety-duplicate': 'safety duplicate',
  other: 'other purpose',
}

const MEASURED_WORDS: Record<Line['measured'], string> = {
  mass: 'weighed',
  count: 'counted',
  estimate: 'guessed',
  carried: 'carried over',
}

/** The book of the lot: each entry with what was measured and what was left after it. */
export function LotLedger({ lot }: { readonly lot: LotRecord }) {
  const format = useFormat()
  const takeBack = useWrite('entry.undo')
  return (
    <section className="pane-part">
      <h3>The book</h3>
      {takeBack.error !== null && <ProblemText problem={takeBack.error.problem} />}
      <RowTable
        className="card-ledger"
        label="The book"
        rows={lot.ledger}
        keyOf={({ movementId }) => movementId}
        rowProps={({ takenBack }) => ({ 'data-taken-back': takenBack })}
        columns={[
          ['Date', ({ on }) => format.day(on)],
          ['What', (line) => <What line={line} />],
          [
            'Change',
            (line) => <Seeds count={format.change(line.count)} mass={format.mass(line.massMg)} />,
            'number',
          ],
          [
            'Left',
            (line) => (
              <Seeds mass={format.mass(line.balanceMassMg)} count={format.number(line.balanceCount)} />
            ),
            'number',
          ],
          [
            <span key="head" className="only-aloud">
              Take back
            </span>,
            ({ entryId, undoable, kind, words }) =>
              undoable && (
                <ActionButton
                  className="word-button"
                  off={takeBack.isPending}
                  onClick={() => takeBack.mutate({ entryId })}
                >
                  take back
                  <span className="only-aloud">
                    : {KIND_WORDS[kind]}, {words}
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
  const purpose = PURPOSE_WORDS[line.purpose] ?? line.purpose
  const how = [line.person, purpose, line.note, line.overridden, MEASURED_WORDS[line.measured]].filter(
    (part) => part !== '',
  )
  return (
    <>
      {KIND_WORDS[line.kind]}
      <span className="own-line soft small">{how.join(' · ')}</span>
      {line.takenBack && <span className="own-line soft small">this entry was taken back</span>}
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
