import type { CallInput, Value } from '../../../db/contract/contract.ts'
import type { PrintKind, TrayItem } from '../../../db/contract/print-operations.ts'
import { useRead } from '../../shared/client/use-read.ts'
import { useWrite } from '../../shared/client/use-write.ts'
import { useTexts } from '../../shared/format/use-texts.ts'
import { PaperPages } from '../../shared/labels/paper-pages.tsx'
import { StorageCards } from '../../shared/labels/storage-cards.tsx'
import { ActionButton } from '../../shared/parts/action-button.tsx'
import { ProblemText } from '../../shared/parts/problem-text.tsx'
import { useSettled } from '../../shared/table-form/use-settled.ts'
import { SheetChoice } from './sheet-choice.tsx'
import { type SheetInUse, useSheet } from './use-sheet.ts'

/** How long the choices rest before the pages are made anew. */
const CALM_MS = 250
/** What one PDF takes at most; the rest follows in the next. */
const AT_ONCE = 500

interface PrintRunProps {
  readonly kind: PrintKind
  readonly items: readonly TrayItem[]
  readonly known: Pick<Value<'tray.list'>, 'sheets' | 'printers'>
}

/** What is ticked, as it will come out; and the keeper's word that it did. */
export function PrintRun({ kind, items, known }: PrintRunProps) {
  const { t } = useTexts()
  const using = useSheet(known)
  const labels = items.reduce((sum, item) => sum + item.copies, 0)
  const input = inputOf(kind, items, using)
  const asked = JSON.stringify(input)
  const settled = useSettled(asked, CALM_MS)
  const preview = useRead('tray.render', JSON.parse(settled) as CallInput<'tray.render'> | null, {
    keepLast: true,
  })
  // The pages of what was chosen before stay until the next are made: it is not these that came out.
  const shown = settled === asked && !preview.isPlaceholderData
  const mark = useWrite('tray.mark-printed')
  const noted = () => {
    if (input !== null) mark.mutate(input, { onSuccess: using.goOn })
  }
  const done = (
    <p className="buttons">
      <ActionButton
        className="button"
        off={mark.isPending || input === null || preview.data === undefined || !shown}
        onClick={noted}
      >
        {t('print.came-out-well')}
      </ActionButton>
      <span className="soft">{t('print.came-out-well-hint')}</span>
    </p>
  )
  return (
    <>
      {kind === 'slip' && (
        <StorageCards of={{ itemIds: items.slice(0, AT_ONCE).map(({ itemId }) => itemId) }} />
      )}
      {kind === 'label' && <SheetChoice using={using} labels={labels} />}
      {preview.error !== null && <ProblemText problem={preview.error.problem} />}
      {preview.isPending && input !== null && (
        <p className="soft" role="status">
          {t('print.making')}
        </p>
      )}
      {mark.error !== null && <ProblemText problem={mark.error.problem} />}
      {preview.error === null && preview.data !== undefined ? (
        <PaperPages name={t(`print.${kind}`)} made={preview.data}>
          {done}
        </PaperPages>
      ) : (
        done
      )}
    </>
  )
}

function inputOf(
  kind: PrintKind,
  items: readonly TrayItem[],
  { sheet, startAt, offsetMm: [right, down], says, cropMarks, printer }: SheetInUse,
): Omit<CallInput<'tray.mark-printed'>, 'key'> | null {
  const itemIds = items.slice(0, AT_ONCE).map(({ itemId }) => itemId)
  if (kind !== 'label') return { kind, itemIds }
  if (sheet === undefined || right === null || down === null) return null
  const marked = { says, cropMarks, printer: printer.trim() }
  return { kind, itemIds, sheet: sheet.sheet, startAt, offsetMm: [right, down], ...marked }
}
