import { flushSync } from 'react-dom'
import { useTexts } from '../../shared/format/use-texts.ts'
import { LIMIT_STEPS } from '../../shared/limits-form/typed-limits.ts'
import { isNobodyYet } from '../../shared/table-form/person-draft.ts'
import type { OpenTable } from '../../shared/table-form/table-draft.tsx'
import { useTable } from '../../shared/table-form/use-table.ts'
import { useVisitLines } from '../../shared/table-form/use-visit-lines.ts'
import { GIFT_REFUSALS, type GiftLine, type GiftStep } from './gift-line.ts'
import { giftRules, nextVisit, type TakeInDraft, visitOf } from './take-in-draft.ts'
import type { SavedVisit } from './taken-in.tsx'

/** What the keys and buttons of the Take in table do, and what is wrong where. */
export function useTakeIn(open: OpenTable<TakeInDraft>, onSaved: (saved: SavedVisit) => void) {
  const { t } = useTexts()
  const { draft } = open
  const { donor } = draft
  const unfoldMore = () =>
    open.visit.dispatch(({ gifts, ...was }) => ({
      ...was,
      gifts: { ...gifts, line: { ...gifts.line, more: true } },
    }))
  const table = useTable(open, {
    first: isNobodyYet(donor) ? 'person' : 'variety',
    writes: 'intake.record',
    refusals: GIFT_REFUSALS,
    unfold: (problems) => {
      if (BEHIND_MORE.some((step) => step in problems)) unfoldMore()
    },
  })
  const gifts = useVisitLines({
    lines: draft.gifts,
    rules: giftRules(open.thisYear, t),
    onLines: (update) => table.change((was) => ({ ...was, gifts: update(was.gifts) })),
    table,
    begins: 'variety',
  })
  const send = async (listed: readonly GiftLine[]): Promise<boolean> => {
    const input = visitOf(draft, listed, open.today)
    if (input === null) {
      table.show({ person: t('take-in.who-problem') })
      return false
    }
    const { taken } = await table.write(input)
    flushSync(() => {
      table.change((was) => nextVisit(was, crypto.randomUUID()))
      onSaved({
        donor: donor.is === 'nobody' ? t('take-in.somebody-unknown') : donor.text,
        gifts: listed,
        taken,
      })
    })
    return true
  }
  return {
    table,
    gifts,
    decide: (decision: GiftLine['decision']) => {
      flushSync(() => gifts.setLine({ decision }))
      table.focus(STEP_OF_DECISION[decision])
    },
    openMore: () => {
      flushSync(unfoldMore)
      table.focus('grownAt')
    },
    save: () => gifts.save(send),
  }
}

const STEP_OF_DECISION = { 'take-in': 'amount', later: 'waitsFor', decline: 'reason' } as const
const BEHIND_MORE: readonly GiftStep[] = [
  'grownAt',
  'donorWords',
  'story',
  'terms',
  ...LIMIT_STEPS,
  'cautionNote',
]
