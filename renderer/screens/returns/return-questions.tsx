import { FLOWERED_NEAR } from '../../../db/domain/shared/closed-sets.ts'
import { useRead } from '../../shared/client/use-read.ts'
import { useTexts } from '../../shared/format/use-texts.ts'
import { SelectField, TextField } from '../../shared/table-form/fields.tsx'
import { fieldsOf, type StepProblems } from '../../shared/table-form/refusals.ts'
import type { useHeldKeys } from '../../shared/table-form/use-held-keys.ts'
import { useWhen } from '../../shared/table-form/use-when.ts'
import { answersOf, type ReturnLine, type ReturnStep } from './return-draft.ts'

interface ReturnQuestionsProps {
  readonly line: ReturnLine
  readonly onChange: (change: Partial<ReturnLine>) => void
  readonly problems: StepProblems<ReturnStep>
  readonly holdKey: ReturnType<typeof useHeldKeys>['holdKey']
}

/** What decides whether it can be offered: three questions at most, and beneath them why it will wait. */
export function ReturnQuestions({ line, onChange, problems, holdKey }: ReturnQuestionsProps) {
  const { t } = useTexts()
  const field = fieldsOf(line, onChange, problems)
  const { near = 'not-known', nearNote = '', odd = '' } = line
  const preview = useRead(
    'return.preview',
    line.parent === null ? null : { parentLotId: line.parent.lotId, ...answersOf(line) },
    { keepLast: true },
  )
  // What is asked after the plants, and so where Enter leads, is known with the answer.
  const whenAsked = useWhen(!preview.isFetching)
  const { questions = [], waits = [] } = (line.parent !== null && preview.data) || {}
  return (
    <>
      <TextField
        label={t('returns.plants')}
        {...field('plants')}
        placeholder={t('returns.plants-placeholder')}
        onKeyDown={(event) => {
          if (event.key === 'Enter' && preview.isFetching) void holdKey(event, whenAsked)
        }}
      />
      {questions.includes('near') && (
        <SelectField
          label={t('returns.near')}
          step="near"
          value={near}
          options={FLOWERED_NEAR.toReversed().map((value) => ({ value, label: t(`returns.near-${value}`) }))}
          onChange={(value) => onChange({ near: value })}
        />
      )}
      {questions.includes('near') && (near === 'kept-apart' || near === 'others') && (
        <TextField
          label={t('returns.near-note')}
          step="nearNote"
          value={nearNote}
          onChange={(value) => onChange({ nearNote: value })}
        />
      )}
      <TextField
        label={t('returns.odd')}
        step="odd"
        value={odd}
        onChange={(value) => onChange({ odd: value })}
        placeholder={t('returns.odd-placeholder')}
      />
      {waits.length > 0 && (
        <p className="note strong" role="status">
          {t('returns.will-wait', { why: waits.join(' ') })}
        </p>
      )}
    </>
  )
}
