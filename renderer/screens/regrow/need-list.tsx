import type { NeedLine } from '../../../db/contract/regeneration-operations.ts'
import { message } from '../../../db/messages/message.ts'
import type { Texts } from '../../../db/messages/texts.ts'
import { useTexts } from '../../shared/format/use-texts.ts'
import { type PaneRow, PaneRows } from '../../shared/panes/pane-rows.tsx'
import { SeedBar } from '../../shared/seed-bar/seed-bar.tsx'
import { StateMark } from '../../shared/state-mark/state-mark.tsx'
import { needAddress } from './regrow-address.ts'

interface NeedListProps {
  readonly needs: readonly NeedLine[]
  /** The accessions that are ticked to be grown. */
  readonly chosen: readonly number[]
  readonly onTick: (accessionId: number) => void
  /** Enter or a click: the card opens and takes the focus. */
  readonly onOpen: (address: string) => void
}

/** Needs, the most urgent first; the space bar ticks one to be grown. */
export function NeedList({ needs, chosen, onTick, onOpen }: NeedListProps) {
  const { t, pieces } = useTexts()
  return (
    <>
      <p className="soft small">
        {pieces(message('needs.keys'), { key: (words) => <kbd key={words.join('')}>{words}</kbd> })}
      </p>
      <PaneRows
        label={t('needs.needs')}
        rows={needs.map((need) => needRow(need, chosen.includes(need.accessionId), onTick, t))}
        rowClass="need-link"
        ranked
        onOpen={onOpen}
        onSpace={(address) => {
          const need = needs.find(({ accessionId }) => needAddress(accessionId) === address)
          if (need !== undefined && need.state !== 'not-kept') onTick(need.accessionId)
        }}
      />
    </>
  )
}

function needRow(
  need: NeedLine,
  isChosen: boolean,
  onTick: NeedListProps['onTick'],
  t: Texts['text'],
): PaneRow {
  return {
    address: needAddress(need.accessionId),
    before: need.state !== 'not-kept' && (
      <input
        type="checkbox"
        tabIndex={-1}
        aria-label={t('needs.grow-variety', { variety: need.variety })}
        checked={isChosen}
        onChange={() => onTick(need.accessionId)}
      />
    ),
    content: (
      <>
        <span className="need-rank">{need.rank}</span>
        <span className="strong">{need.variety}</span>
        <span className="need-crop">
          {need.crop} · {need.accessionNumber}
        </span>
        <StateMark mark={need.state} />
        <span className="need-bar">
          <SeedBar {...barOf(need)} />
        </span>
        <span className="need-cost">
          {isChosen && <strong>{t('needs.to-grow')} · </strong>}
          {need.growOut !== null && (
            <strong>{need.growOut.failed ? t('needs.growing-failed') : t('needs.being-grown')} · </strong>
          )}
          {need.costInWords}
        </span>
      </>
    ),
  }
}

/** What the seed bar of a need draws. */
export function barOf({ stock }: Pick<NeedLine, 'stock'>) {
  const { living, total, keep, low, high, state, sentence } = stock
  return { living, total, keep, low, high, state, sentence }
}
