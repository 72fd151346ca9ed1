import { type ComponentProps, Fragment, type ReactNode, type RefObject } from 'react'
import type { Problem } from '../../../db/contract/problem.ts'
import { type Message, message } from '../../../db/messages/message.ts'
import { ORDER_KEY } from '../format/keys.ts'
import { useTexts } from '../format/use-texts.ts'
import { ActionButton } from '../parts/action-button.tsx'
import { ProblemText } from '../parts/problem-text.tsx'
import { OtherVisits } from './other-visits.tsx'
import { StepForm } from './step-form.tsx'
import type { DraftVisit } from './use-draft.ts'
import type { LinesAtWork } from './use-visit-lines.ts'

type Keys = Pick<ComponentProps<typeof StepForm>, 'onEnd' | 'onEndApart' | 'onSave' | 'onMore' | 'catches'>

interface TableFrameProps<D> extends Keys {
  readonly label: string
  readonly table: {
    readonly form: RefObject<HTMLElement | null>
    readonly visit: DraftVisit<D, never>
    readonly shown: { readonly refused: Problem | null }
    readonly saving: boolean
  }
  /** What stands above all else. */
  readonly head?: ReactNode
  /** An unfinished draft in words. */
  readonly inWords: (draft: D) => Message | string
  /** What Shift with Enter leads to. */
  readonly more: string
  readonly saves?: string
  /** What the part beside the form is called, and its heading where that is another. */
  readonly besideLabel: string
  readonly besideHeading?: string
  readonly beside: ReactNode
  readonly saveWord: string
  readonly children: ReactNode
}

/** The frame of a table: one column to fill in; beside it what was gathered, with the button that saves it. */
export function TableFrame<D>(props: TableFrameProps<D>) {
  const { label, table, head, inWords, more, saves, besideLabel, beside, saveWord, children, ...keys } = props
  const { form, visit, shown, saving } = table
  return (
    <StepForm label={label} className="table-screen" form={form} {...keys}>
      <div className="table-frame">
        <div className="table-column stack-4">
          {head}
          <OtherVisits visit={visit} inWords={inWords} />
          {children}
          <KeyHints more={more} saves={saves} />
        </div>
        <aside className="table-visit" aria-label={besideLabel}>
          <h2>{props.besideHeading ?? besideLabel}</h2>
          {beside}
          <SaveTrouble refused={shown.refused} kept={visit.kept} />
          <ActionButton className="button table-button" off={saving} onClick={keys.onSave}>
            {saveWord}
          </ActionButton>
        </aside>
      </div>
    </StepForm>
  )
}

interface LineCardProps<L extends { readonly id: string }> {
  readonly lines: LinesAtWork<L, never>['lines']
  /** What a line is. */
  readonly noun: 'Packet' | 'Line' | 'Gift'
  readonly onList: () => void
  /** What else can be done with the line. */
  readonly doing?: ReactNode
  readonly children: ReactNode
}

/** The card of the line being typed, with the button that lists it. */
export function LineCard<L extends { readonly id: string }>(props: LineCardProps<L>) {
  const { lines, noun, onList, doing, children } = props
  const { t } = useTexts()
  const at = lines.listed.findIndex(({ id }) => id === lines.changing)
  const what = noun.toLowerCase() as Lowercase<typeof noun>
  return (
    <div className="table-card stack-3">
      <h2>
        {at < 0
          ? t(`table.nth.${what}`, { n: lines.listed.length + 1 })
          : t(`table.changing.${what}`, { n: at + 1 })}
      </h2>
      {children}
      <p className="buttons">
        <button type="button" className="quiet-button table-button" onClick={onList}>
          {t(lines.changing === null ? `table.list.${what}` : 'table.list-changed')}
        </button>
        {doing}
      </p>
    </div>
  )
}

interface SaveTroubleProps {
  /** Why the last save was refused, where no field shows it. */
  readonly refused: Problem | null | undefined
  /** Whether what is typed was kept as a draft. */
  readonly kept: boolean
}

/** What stands in the way of a table's work being saved, above the button that saves it. */
export function SaveTrouble({ refused, kept }: SaveTroubleProps) {
  const { t } = useTexts()
  return (
    <>
      {refused && <ProblemText problem={refused} />}
      {!kept && <p className="table-field-warning">{t('table.not-kept')}</p>}
    </>
  )
}

interface KeyHintsProps {
  /** What Shift with Enter leads to. */
  readonly more: string
  readonly saves?: string | undefined
}

/** The keys of a table form, beneath it. */
export function KeyHints({ more, saves }: KeyHintsProps) {
  const { pieces } = useTexts()
  const hints = [
    message('table.key.on'),
    message('table.key.back'),
    message('table.key.more', { more }),
    message('table.key.save', { key: ORDER_KEY, saves: saves ?? message('table.saves-visit') }),
    message('table.key.screens'),
  ]
  return (
    <p className="key-hints soft">
      {hints.map((hint, index) => (
        <Fragment key={hint.id}>
          {index > 0 && ' · '}
          {pieces(hint, KEYS)}
        </Fragment>
      ))}
    </p>
  )
}

const KEYS = Object.fromEntries(
  ['enter', 'esc', 'shift', 'order', 'f6'].map((name) => [
    name,
    (children: ReactNode[]) => <kbd key={name}>{children}</kbd>,
  ]),
)
