import type { NeedLine } from '../../../db/contract/regeneration-operations.ts'
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
  return (
    <>
      <p className="soft small">
        <kbd>↓</kbd> goes on · <kbd>Space</kbd> ticks to grow it · <kbd>Enter</kbd> opens why
      </p>
      <PaneRows
        label="Needs"
        rows={needs.map((need) => needRow(need, chosen.includes(need.accessionId), onTick))}
        rowClass="need-link"
        ranked
        onOpen={onOpen}
        onSpace={(address) => {
          const need = needs.find(({ accessionId }) => needAddress(accessionId) === address)
          if (need !== undefined) onTick(need.accessionId)
        }}
      />
    </>
  )
}

function needRow(need: NeedLine, isChosen: boolean, onTick: NeedListProps['onTick']): PaneRow {
  return {
    address: needAddress(need.accessionId),
    before: (
      <input
        type="checkbox"
        tabIndex={-1}
        aria-label={`Grow ${need.variety} this season`}
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
          {isChosen && <strong>to grow · </strong>}
          {need.growOut !== null && (
            <strong>{need.growOut.failed ? 'its growing failed · ' : 'being grown · '}</strong>
          )}
          lost by waiting: {need.costInWords}
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
