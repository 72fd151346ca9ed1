import type { Value } from '../../../db/contract/contract.ts'
import type { PrintKind, TrayItem } from '../../../db/contract/print-operations.ts'
import { useWrite } from '../../shared/client/use-write.ts'
import { useTexts } from '../../shared/format/use-texts.ts'
import { ActionButton } from '../../shared/parts/action-button.tsx'
import { ProblemText } from '../../shared/parts/problem-text.tsx'
import { LabelCopies } from './label-copies.tsx'
import { PeriodLetters } from './period-letters.tsx'

interface TrayGroupProps {
  readonly kind: PrintKind
  readonly items: readonly TrayItem[]
  readonly leftOut: ReadonlySet<number>
  /** Donors who get no letter, with why. */
  readonly notWrittenTo: Value<'tray.list'>['leftOut']
  readonly lettersSince: string
  readonly onToggle: (itemId: number) => void
}

/** What waits of one kind: each with its tick, and for labels how many and what they say. */
export function TrayGroup({ kind, items, leftOut, notWrittenTo, lettersSince, onToggle }: TrayGroupProps) {
  const { t } = useTexts()
  const remove = useWrite('tray.remove')
  return (
    <section className="print-group" aria-label={t('print.that-wait', { kind: t(`print.${kind}`) })}>
      {remove.error !== null && <ProblemText problem={remove.error.problem} />}
      <ul className="ruled">
        {items.map((item, index) => (
          <li key={keyOf(items, index)} className="print-item">
            <label className="print-item-name">
              <input
                type="checkbox"
                checked={!leftOut.has(item.itemId) && item.heldBack === null}
                disabled={item.heldBack !== null}
                onChange={() => onToggle(item.itemId)}
              />
              <span>
                <strong>{item.title}</strong> <span>{item.detail}</span>
              </span>
            </label>
            <ActionButton
              className="word-button"
              off={remove.isPending}
              onClick={() => remove.mutate({ itemIds: [item.itemId] })}
            >
              {t('print.take-out')}
              <span className="only-aloud">: {item.title}</span>
            </ActionButton>
            {kind === 'label' && <LabelCopies item={item} />}
            <p className="print-item-why small soft">{item.because}</p>
            {item.heldBack !== null && <p className="label-warning note">{item.heldBack}</p>}
          </li>
        ))}
      </ul>
      {kind === 'letter' && <PeriodLetters key={lettersSince} since={lettersSince} />}
      {notWrittenTo.length > 0 && (
        <section className="print-left-out stack-2" aria-label={t('print.no-letter')}>
          <h2>{t('print.no-letter')}</h2>
          <ul className="bullets">
            {notWrittenTo.map(({ personId, sentence }) => (
              <li key={personId}>{sentence}</li>
            ))}
          </ul>
        </section>
      )}
    </section>
  )
}

/** A label keeps its row when how many or what it says is changed, though it is then another item. */
function keyOf(items: readonly TrayItem[], index: number): string {
  const { lotId, itemId } = items[index] ?? { lotId: null, itemId: index }
  if (lotId === null) return `item-${itemId}`
  return `lot-${lotId}-${items.slice(0, index).filter((before) => before.lotId === lotId).length}`
}
