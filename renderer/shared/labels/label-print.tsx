import { useState } from 'react'
import type { CallInput, Value } from '../../../db/contract/contract.ts'
import type { LabelSheet } from '../../../db/contract/print-operations.ts'
import { CardForm, problemAt } from '../card-form/card-form.tsx'
import { call } from '../client/call.ts'
import { ProblemError } from '../client/problem-error.ts'
import { useRead } from '../client/use-read.ts'
import { useWrite } from '../client/use-write.ts'
import { useTexts } from '../format/use-texts.ts'
import { ActionButton } from '../parts/action-button.tsx'
import { ProblemText } from '../parts/problem-text.tsx'
import { SelectField, TextField } from '../table-form/fields.tsx'
import { PaperPages } from './paper-pages.tsx'
import { SheetPicture } from './sheet-picture.tsx'
import { StorageCards } from './storage-cards.tsx'

interface LabelPrintProps {
  readonly title: string
  readonly lotIds: readonly number[]
  /** What a packet is to say it holds; empty says what the lot holds. */
  readonly contents: string
  readonly onClose?: () => void
}

const KEPT_AS = 'label-sheet'

/** Labels for some lots: on which sheet, from which label on, how many of each; then the pages to look at and print. */
export function LabelPrint({ title, lotIds, contents, onClose }: LabelPrintProps) {
  const { t } = useTexts()
  const sheets = useRead('label-sheet.list', {}).data?.sheets ?? []
  const paper = useRead('collection.get', {}).data?.settings.paper ?? 'a4'
  const [picked, setPicked] = useState(() => localStorage.getItem(KEPT_AS))
  const sheet =
    sheets.find((each) => each.sheet === picked) ?? sheets.find((each) => each.sheet.startsWith(paper))
  const [startAt, setStartAt] = useState(1)
  const [copies, setCopies] = useState('1')
  const [says, setSays] = useState(contents)
  const making = useMaking()
  const pick = (next: LabelSheet) => {
    localStorage.setItem(KEPT_AS, next)
    setPicked(next)
    setStartAt(1)
  }
  const make = () => {
    if (sheet === undefined) return
    const each = lotIds.map((lotId) => ({ lotId, copies: Number(copies) || 1, contents: says }))
    void making.make({ labels: each, sheet: sheet.sheet, startAt })
  }
  if (sheet === undefined) return null
  return (
    <>
      <CardForm
        title={title}
        sendWord={t('labels.make')}
        busy={making.busy}
        error={making.error}
        shownAtField={['labels.0.copies', 'labels.0.contents']}
        onSend={make}
        {...(onClose === undefined ? {} : { onClose })}
      >
        <SelectField
          label={t('labels.sheet')}
          size="record"
          value={sheet.sheet}
          options={sheets.map((each) => ({ value: each.sheet, label: each.name }))}
          onChange={pick}
        />
        <TextField
          label={t('labels.how-many', { lots: lotIds.length })}
          step="copies"
          size="record"
          value={copies}
          onChange={setCopies}
          problem={problemAt(making.error, 'labels.0.copies')}
        />
        <TextField
          label={t('labels.says')}
          step="contents"
          size="record"
          value={says}
          onChange={setSays}
          hint={t('labels.says-hint')}
          problem={problemAt(making.error, 'labels.0.contents')}
        />
        <SheetPicture
          columns={sheet.columns}
          rows={sheet.rows}
          startAt={startAt}
          labels={lotIds.length * (Number(copies) || 1)}
          onStartAt={setStartAt}
        />
      </CardForm>
      {making.made !== null && (
        <PaperPages name={t('labels.pages')} made={making.made} takesFocus>
          <CameOutWell lotIds={lotIds} sheet={making.made.sheet} startAt={making.made.startAt} />
        </PaperPages>
      )}
      <StorageCards of={{ lotIds: [...lotIds] }} />
    </>
  )
}

type LabelsAsked = CallInput<'label.print'> & { readonly sheet: LabelSheet; readonly startAt: number }

interface Made {
  readonly busy: boolean
  readonly error: ProblemError | null
  /** The pages, and where the labels lie that are on them. */
  readonly made: (Value<'label.print'> & Pick<LabelsAsked, 'sheet' | 'startAt'>) | null
}

function useMaking() {
  const [state, setState] = useState<Made>({ busy: false, error: null, made: null })
  const make = async (input: LabelsAsked) => {
    setState((was) => ({ ...was, busy: true, error: null }))
    try {
      const made = await call('label.print', input)
      setState({ busy: false, error: null, made: { ...made, sheet: input.sheet, startAt: input.startAt } })
    } catch (thrown) {
      if (!(thrown instanceof ProblemError)) throw thrown
      setState((was) => ({ ...was, busy: false, error: thrown }))
    }
  }
  return { ...state, make }
}

interface CameOutWellProps extends Pick<LabelsAsked, 'sheet' | 'startAt'> {
  readonly lotIds: readonly number[]
}

/** Takes the labels of some lots out of the print tray, where they wait, so that they are not printed once more. */
function CameOutWell({ lotIds, sheet, startAt }: CameOutWellProps) {
  const { t } = useTexts()
  const tray = useRead('tray.list', {}).data
  const mark = useWrite('tray.mark-printed')
  const labels = tray?.groups.find(({ kind }) => kind === 'label')?.items ?? []
  const waiting = labels.filter(({ lotId }) => lotId !== null && lotIds.includes(lotId))
  if (waiting.length === 0) return null
  const itemIds = waiting.map(({ itemId }) => itemId)
  return (
    <>
      {mark.error !== null && <ProblemText problem={mark.error.problem} />}
      <p className="buttons">
        <ActionButton
          className="button"
          off={mark.isPending}
          onClick={() => mark.mutate({ kind: 'label', itemIds, sheet, startAt })}
        >
          {t('labels.came-out-well')}
        </ActionButton>
        <span className="soft">{t('labels.came-out-well-hint')}</span>
      </p>
    </>
  )
}
