import type { ComponentProps } from 'react'
import type { Value } from '../../../db/contract/contract.ts'
import { call } from '../client/call.ts'
import { useTexts } from '../format/use-texts.ts'
import { StateMark } from '../state-mark/state-mark.tsx'
import { type LotLine, type PickedFrom, withLot } from './lot-line.ts'
import { SuggestField } from './suggest-field.tsx'
import type { SuggestionSource } from './use-suggestions.ts'

type LotOffered = Value<'withdrawal.list-lots'>['lots'][number]

/** Working lots by scan, number or letters: the oldest good lot of each variety first. */
const LOTS: SuggestionSource<LotOffered> = {
  name: 'lots-to-hand-out',
  find: async (text) => {
    const { lots } = await call('withdrawal.list-lots', { text, limit: 8 })
    return lots.map((lot) => ({
      key: String(lot.lotId),
      name: lot.variety,
      detail: <LotDetail lot={lot} />,
      item: lot,
    }))
  },
}

function LotDetail({ lot }: { readonly lot: LotOffered }) {
  return (
    <span className="stack-1">
      <span>
        {[lot.lotNumber, lot.crop, lot.harvest, lot.quantity.words, lot.place]
          .filter((part) => part !== '')
          .join(' · ')}
      </span>
      <span className="row">
        <span>{lot.why}</span> <StateMark mark={lot.state} />
      </span>
    </span>
  )
}

type FieldOf = ComponentProps<typeof SuggestField<PickedFrom>>

interface LotFieldProps extends Pick<FieldOf, 'problem' | 'words' | 'spoken' | 'nothingFound'> {
  readonly line: LotLine
  readonly onChange: (change: Partial<LotLine>) => void
}

/** The lot of a line: by its label, its number, or letters of its name. */
export function LotField({ line, onChange, ...rest }: LotFieldProps) {
  const { t } = useTexts()
  return (
    <SuggestField
      label={t('table.lot')}
      step="lot"
      size="table"
      text={line.text}
      chosen={line.lot !== null}
      onText={(text) => onChange({ text, lot: null })}
      source={LOTS}
      onPick={(lot) => onChange(withLot(line, lot, t))}
      placeholder={t('table.lot-like')}
      {...rest}
    />
  )
}
