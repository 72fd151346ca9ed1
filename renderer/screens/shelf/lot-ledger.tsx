import type { LotRecord } from '../../../db/contract/shelf-operations.ts'
import { useWrite } from '../../shared/client/use-write.ts'
import { useFormat } from '../../shared/format/use-format.ts'
import { ActionButton } from '../../shared/parts/action-button.tsx'
import { ProblemText } from '../../shared/parts/problem-text.tsx'

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
  const takeBack = useWrite('entry.undo')
  return (
    <section className="pane-part">
      <h3>The book</h3>
      {takeBack.error !== null && <ProblemText problem={takeBack.error.problem} />}
      <table className="plain-table card-ledger" aria-label="The book">
        <thead>
          <tr>
            <th scope="col">Date</th>
            <th scope="col">What</th>
            <th scope="col" className="number">
              Change
            </th>
            <th scope="col" className="number">
              Left
            </th>
            <th scope="col">
              <span className="only-aloud">Take back</span>
            </th>
          </tr>
        </thead>
        <tbody>
          {lot.ledger.map((line) => (
            <LedgerRow
              key={line.movementId}
              line={line}
              busy={takeBack.isPending}
              onUndo={() => takeBack.mutate({ entryId: line.entryId })}
            />
          ))}
        </tbody>
      </table>
    </section>
  )
}

interface LedgerRowProps {
  readonly line: Line
  readonly busy: boolean
  readonly onUndo: () => void
}

function LedgerRow({ line, busy, onUndo }: LedgerRowProps) {
  const format = useFormat()
  const purpose = PURPOSE_WORDS[line.purpose] ?? line.purpose
  const how = [line.person, purpose, line.note, line.overridden, MEASURED_WORDS[line.measured]].filter(
    (part) => part !== '',
  )
  return (
    <tr data-taken-back={line.takenBack}>
      <td>{format.day(line.on)}</td>
      <td>
        {KIND_WORDS[line.kind]}
        <span className="own-line soft small">{how.join(' · ')}</span>
        {line.takenBack && <span className="own-line soft small">this entry was taken back</span>}
      </td>
      <td className="number">
        {format.change(line.count)}
        <span className="own-line soft small">{format.mass(line.massMg)}</span>
      </td>
      <td className="number">
        {format.number(line.balanceCount)}
        <span className="own-line soft small">{format.mass(line.balanceMassMg)}</span>
      </td>
      <td>
        {line.undoable && (
          <ActionButton className="word-button" off={busy} onClick={onUndo}>
            take back
            <span className="only-aloud">
              : {KIND_WORDS[line.kind]}, {line.words}
            </span>
          </ActionButton>
        )}
      </td>
    </tr>
  )
}
