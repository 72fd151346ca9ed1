import { call } from '../../shared/client/call.ts'
import { AmountField } from '../../shared/table-form/amount-field.tsx'
import { CautionsField } from '../../shared/table-form/cautions-field.tsx'
import { CheckField } from '../../shared/table-form/check-field.tsx'
import { HarvestField } from '../../shared/table-form/harvest-field.tsx'
import { SuggestField } from '../../shared/table-form/suggest-field.tsx'
import { TextField } from '../../shared/table-form/text-field.tsx'
import type { SuggestionSource } from '../../shared/table-form/use-suggestions.ts'
import type { Parent, ReturnLine, ReturnProblems } from './return-draft.ts'

type LotFound = Pick<Parent, 'lotId' | 'lotNumber' | 'variety'>

/** Any lot, empty ones too: seed is brought back of what has long gone out. */
const LOTS: SuggestionSource<LotFound> = {
  name: 'lots to grow from',
  find: async (text) => {
    const { lots } = await call('collection.search', { text, limit: 8 })
    return lots.map((lot) => ({
      key: String(lot.lotId),
      name: lot.variety,
      detail: `${lot.lotNumber} · ${lot.crop} · ${lot.words}`,
      item: lot,
    }))
  },
}

interface ReturnFieldsProps {
  readonly line: ReturnLine
  readonly onChange: (change: Partial<ReturnLine>) => void
  readonly onPick: (lot: LotFound) => void
  readonly problems: ReturnProblems
  readonly thisYear: number
}

/** What is asked of a lot that comes back: what it was grown from, when, how much, and how. */
export function ReturnFields({ line, onChange, onPick, problems, thisYear }: ReturnFieldsProps) {
  return (
    <>
      <SuggestField
        label="Grown from"
        step="lot"
        size="table"
        text={line.text}
        chosen={line.parent !== null}
        onText={(text) => onChange({ text, parent: null })}
        source={LOTS}
        onPick={onPick}
        nothingFound={(text) => `No lot fits ${text}. Take seed from elsewhere in as a gift.`}
        placeholder="scan, number, or a few letters"
        problem={problems.lot}
        words={line.parent && <p className="soft">{parentInWords(line.parent)}</p>}
        spoken={line.parent === null ? '' : parentInWords(line.parent)}
      />
      {line.parent !== null && line.parent.promise !== '' && (
        <CheckField
          step="meets"
          label={`This keeps the promise: ${line.parent.promise}`}
          checked={line.meets}
          onChange={(meets) => onChange({ meets })}
        />
      )}
      <HarvestField
        value={line.harvest}
        thisYear={thisYear}
        onChange={(harvest) => onChange({ harvest })}
        problem={problems.harvest}
      />
      <AmountField
        label="Amount"
        step="amount"
        size="table"
        value={line.amount}
        onChange={(amount) => onChange({ amount })}
        lotId={line.parent?.lotId}
        sample={line.sample}
        problem={problems.amount}
        placeholder="12.5 g, 30 seeds, 3 packets of 25"
      />
      <TextField
        label="Counted sample"
        step="sample"
        value={line.sample}
        onChange={(sample) => onChange({ sample })}
        placeholder="25 weigh 6.10 g"
        problem={problems.sample}
      />
      <TextField
        label="Plants grown"
        step="plants"
        value={line.plants}
        onChange={(plants) => onChange({ plants })}
        placeholder="how many it was saved from"
        problem={problems.plants}
      />
      <TextField
        label="Where grown"
        step="grown-at"
        value={line.grownAt}
        onChange={(grownAt) => onChange({ grownAt })}
        problem={problems.grownAt}
      />
      <TextField
        label="Note"
        step="note"
        long
        value={line.note}
        onChange={(note) => onChange({ note })}
        placeholder="what else flowered near, what was picked out"
        problem={problems.note}
      />
      <CautionsField {...line} onChange={onChange} problem={problems.cautionNote} apart />
    </>
  )
}

function parentInWords(parent: Parent): string {
  return parent.withdrawalId === null
    ? 'A new lot of the same accession, one generation on.'
    : 'A new lot of the same accession, one generation on. They took seed of it here.'
}
