import type { ComponentProps } from 'react'
import { type Message, message } from '../../../db/messages/message.ts'
import { call } from '../../shared/client/call.ts'
import { useTexts } from '../../shared/format/use-texts.ts'
import { CautionsField } from '../../shared/table-form/cautions-field.tsx'
import { CheckField, TextField } from '../../shared/table-form/fields.tsx'
import { fieldsOf, type StepProblems } from '../../shared/table-form/refusals.ts'
import { SeedFields } from '../../shared/table-form/seed-fields.tsx'
import { SuggestField } from '../../shared/table-form/suggest-field.tsx'
import type { SuggestionSource } from '../../shared/table-form/use-suggestions.ts'
import type { Parent, ReturnLine, ReturnStep } from './return-draft.ts'
import { ReturnQuestions } from './return-questions.tsx'

type LotFound = Pick<Parent, 'lotId' | 'lotNumber' | 'variety'>

/** Any lot, empty ones too: seed is brought back of what has long gone out. */
const LOTS: SuggestionSource<LotFound> = {
  name: 'lots-to-grow-from',
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
  readonly problems: StepProblems<ReturnStep>
  readonly thisYear: number
  readonly holdKey: ComponentProps<typeof ReturnQuestions>['holdKey']
}

/** What is asked of a lot that comes back: what it was grown from, when, how much, and how. */
export function ReturnFields({ line, onChange, onPick, problems, thisYear, holdKey }: ReturnFieldsProps) {
  const { t, say } = useTexts()
  const field = fieldsOf(line, onChange, problems)
  return (
    <>
      <SuggestField
        label={t('returns.grown-from')}
        step="lot"
        size="table"
        text={line.text}
        chosen={line.parent !== null}
        onText={(text) => onChange({ text, parent: null })}
        source={LOTS}
        onPick={onPick}
        nothingFound={(typed) => t('returns.no-lot', { typed })}
        placeholder={t('returns.grown-from-placeholder')}
        problem={problems.lot}
        words={line.parent && <p className="soft">{say(parentTold(line.parent))}</p>}
        spoken={line.parent === null ? '' : say(parentTold(line.parent))}
      />
      {line.parent !== null && line.parent.promise !== '' && (
        <CheckField
          label={t('returns.keeps-promise', { promise: line.parent.promise })}
          {...field('meets')}
          checked={line.meets}
        />
      )}
      <SeedFields
        line={line}
        thisYear={thisYear}
        onChange={onChange}
        problems={problems}
        lotId={line.parent?.lotId}
      />
      <ReturnQuestions {...{ line, onChange, problems, holdKey }} />
      <TextField label={t('returns.where-grown')} {...field('grownAt')} />
      <TextField
        label={t('returns.note')}
        long
        {...field('note')}
        placeholder={t('returns.note-placeholder')}
      />
      <CautionsField {...line} onChange={onChange} problem={problems.cautionNote} apart />
    </>
  )
}

function parentTold({ withdrawalId }: Parent): Message {
  return message(withdrawalId === null ? 'returns.new-lot' : 'returns.new-lot-took')
}
