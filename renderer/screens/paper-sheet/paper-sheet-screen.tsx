import { useState } from 'react'
import { flushSync } from 'react-dom'
import { Link } from 'wouter'
import { type Message, message } from '../../../db/messages/message.ts'
import { useTexts } from '../../shared/format/use-texts.ts'
import { useLotScan } from '../../shared/scans/scans.ts'
import { StateMark } from '../../shared/state-mark/state-mark.tsx'
import { AmountField } from '../../shared/table-form/amount-field.tsx'
import { DateField } from '../../shared/table-form/fields.tsx'
import { GatheredLines } from '../../shared/table-form/gathered-lines.tsx'
import { LotField } from '../../shared/table-form/lot-field.tsx'
import { withLot } from '../../shared/table-form/lot-line.ts'
import { PersonFields } from '../../shared/table-form/person-fields.tsx'
import { type OpenTable, TableDraft } from '../../shared/table-form/table-draft.tsx'
import { LineCard, TableFrame } from '../../shared/table-form/table-frame.tsx'
import { useTable } from '../../shared/table-form/use-table.ts'
import { useVisitLines } from '../../shared/table-form/use-visit-lines.ts'
import {
  emptyPaper,
  isBlankPaper,
  newOnSheet,
  PAPER_LINES,
  PAPER_REFUSALS,
  type PaperDraft,
  type PaperLine,
  sheetOf,
  withPerson,
} from './paper-draft.ts'
import { useLeftBySheet } from './use-left.ts'

const RULES = { kind: 'paper-sheet', blank: emptyPaper, isBlank: isBlankPaper } as const

/** A paper sign-out sheet, typed in afterwards as one entry. */
export function PaperSheetScreen() {
  const [last, setLast] = useState<number | null>(null)
  return (
    <TableDraft<PaperDraft> rules={RULES}>
      {(open) => <PaperTable open={open} last={last} onSaved={setLast} />}
    </TableDraft>
  )
}

interface PaperTableProps {
  readonly open: OpenTable<PaperDraft>
  /** How many lines the last sheet had, or null. */
  readonly last: number | null
  readonly onSaved: (lines: number) => void
}

/** The day of the sheet, the line being typed, and the lines so far to look over. */
function PaperTable({ open, last, onSaved }: PaperTableProps) {
  const work = usePaper(open, onSaved)
  const { table, lines } = work
  const { t } = useTexts()
  return (
    <TableFrame
      label={t('paper-sheet.label')}
      table={table}
      onEnd={lines.listOrShow}
      onEndApart={lines.backToLine}
      onSave={work.save}
      onMore={() => table.focus('on')}
      catches={table.held.catches}
      inWords={sheetInWords}
      more={t('paper-sheet.more')}
      saves={t('paper-sheet.saves')}
      besideLabel={t('paper-sheet.this-sheet')}
      beside={
        <GatheredLines
          work={lines}
          nameOf={(line) => line.person.text}
          inWords={(line) => (
            <p>
              {line.text} · {line.amount}
            </p>
          )}
          whileEmpty={
            <p className="soft">
              {last === null ? t('paper-sheet.gathers') : t('paper-sheet.saved', { lines: last })}
            </p>
          }
          total={({ length }) => message('paper-sheet.lines', { lines: length })}
        />
      }
      saveWord={t('paper-sheet.save')}
    >
      <div className="head-row">
        <h1>{t('paper-sheet.title')}</h1>
        <Link href="/hand-out">{t('paper-sheet.back')}</Link>
      </div>
      <DateField
        label={t('paper-sheet.day')}
        step="on"
        value={open.draft.on}
        onChange={(on) => table.set({ on })}
        problem={table.shown.problems.on}
      />
      <PaperLineCard work={work} />
    </TableFrame>
  )
}

/** One line of the sheet: who, what, and how much. */
function PaperLineCard({
  work: { table, lines, setPerson },
}: {
  readonly work: ReturnType<typeof usePaper>
}) {
  const { line, listed } = lines.lines
  const { problems } = table.shown
  const left = useLeftBySheet(table.draft)
  const { t } = useTexts()
  return (
    <LineCard lines={lines.lines} noun="Line" onList={lines.listOrShow}>
      <PersonFields
        key={line.id}
        label={t('paper-sheet.who')}
        nobody={t('paper-sheet.nobody')}
        nobodyMeans={t('paper-sheet.nobody-means')}
        person={line.person}
        onChange={setPerson}
        problems={problems}
        newHere={newOnSheet(listed)}
      />
      <LotField
        line={line}
        onChange={lines.setLine}
        nothingFound={(typed) => message('paper-sheet.no-lot', { typed })}
        problem={problems.lot}
      />
      <AmountField
        label={t('paper-sheet.amount')}
        step="amount"
        size="table"
        value={line.amount}
        onChange={(amount) => lines.setLine({ amount })}
        lotId={line.lot?.lotId}
        problem={problems.amount}
        placeholder={t('paper-sheet.amount-like')}
        after={left !== undefined && <LeftInLot left={left} />}
      />
    </LineCard>
  )
}

/** What the lot holds when the whole sheet is saved, or why it cannot be. */
function LeftInLot({ left }: { readonly left: NonNullable<ReturnType<typeof useLeftBySheet>> }) {
  const { t } = useTexts()
  if (left.left === null)
    return left.problem === null ? null : <p className="table-field-warning">{left.problem.sentence}</p>
  return (
    <p className="soft">
      {t('paper-sheet.left', { lot: left.lotNumber, amount: left.left.words })}{' '}
      <StateMark mark={left.stock.state} />
    </p>
  )
}

/** What the keys, scans and buttons of the paper sheet do, and what is wrong where. */
function usePaper(open: OpenTable<PaperDraft>, onSaved: (lines: number) => void) {
  const { draft, today } = open
  const { t } = useTexts()
  const table = useTable(open, {
    first: draft.on === '' ? 'on' : 'person',
    writes: 'paper-sheet.record',
    refusals: PAPER_REFUSALS,
  })
  const onLines = (update: (was: PaperDraft['lines']) => PaperDraft['lines']) =>
    table.change((was) => ({ ...was, lines: update(was.lines) }))
  const lines = useVisitLines({ lines: draft.lines, rules: PAPER_LINES, onLines, table, begins: 'person' })
  const send = async (listed: readonly PaperLine[]): Promise<boolean> => {
    await table.write(sheetOf(draft, listed))
    flushSync(() => {
      table.change(() => emptyPaper(crypto.randomUUID()))
      onSaved(listed.length)
    })
    table.focus('on')
    return true
  }
  useLotScan((lot) => {
    flushSync(() => lines.setLine(withLot(draft.lines.line, lot, t)))
    table.focus('amount')
  }, table.refuse)
  return {
    table,
    lines,
    setPerson: (change: Partial<PaperLine['person']>) => onLines((was) => withPerson(was, change)),
    save: () => {
      if (draft.on === '' || draft.on > today) table.show({ on: WHICH_DAY })
      else lines.save(send)
    },
  }
}

function sheetInWords({ lines }: PaperDraft): Message {
  return message('paper-sheet.unfinished', { lines: lines.listed.length })
}

const WHICH_DAY = message('paper-sheet.which-day')
