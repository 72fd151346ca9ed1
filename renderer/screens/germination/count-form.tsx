import { type KeyboardEvent, useRef } from 'react'
import { flushSync } from 'react-dom'
import type { TestRecord } from '../../../db/contract/germination-operations.ts'
import { CATEGORIES, type Category, tallied } from '../../../db/domain/germination/germination-test.ts'
import type { Texts } from '../../../db/messages/texts.ts'
import { problemAt } from '../../shared/card-form/card-form.tsx'
import { DayField } from '../../shared/card-form/day-field.tsx'
import type { SavedForm } from '../../shared/card-form/use-saved-form.ts'
import { useToday } from '../../shared/card-form/use-today.ts'
import { ProblemError } from '../../shared/client/problem-error.ts'
import { useWrite } from '../../shared/client/use-write.ts'
import { ORDER_KEY } from '../../shared/format/keys.ts'
import { useFormat } from '../../shared/format/use-format.ts'
import { useTexts } from '../../shared/format/use-texts.ts'
import { ActionButton } from '../../shared/parts/action-button.tsx'
import { ProblemText } from '../../shared/parts/problem-text.tsx'
import { StepForm } from '../../shared/table-form/step-form.tsx'
import { focusStepNamed } from '../../shared/table-form/steps.ts'
import { useHeldKeys } from '../../shared/table-form/use-held-keys.ts'
import type { TypedCount } from './bench-draft.ts'
import { cellName, cellsShown, columnKey, NONE, readCells, stillThere } from './typed-counts.ts'

interface CountFormProps {
  readonly test: TestRecord
  readonly kept: SavedForm<TypedCount>
  /** False when the last key typed could not be kept. */
  readonly safe: boolean
  /** A count was written down: whether it was the last that is wanted. */
  readonly onCounted: (last: boolean) => void
}

/** What was taken out of each replicate on a day. Enter goes on along the row, Ctrl with Enter writes it down. */
export function CountForm({ test, kept, safe, onCounted }: CountFormProps) {
  const { typed, change, discard } = kept
  const today = useToday()
  const format = useFormat()
  const { t } = useTexts()
  const form = useRef<HTMLElement>(null)
  const write = useWrite('germination.record-count')
  const on = typed.on || today
  const left = stillThere(test, on)
  const again = test.counts.some((count) => count.on === on)
  const cells = cellsShown(typed.cells, test.counts, on)
  const read = readCells(cells, left.length)
  const tallies = 'tallies' in read ? read.tallies : null
  const after = left.map((seeds, index) => seeds - tallied(tallies?.[index] ?? NONE))
  const tooMany = after.findIndex((seeds) => seeds < 0)
  const held = useHeldKeys()
  /** Returns whether it was written down. */
  const writeDown = async (): Promise<boolean> => {
    const wrong = wrongCell(read, tooMany)
    if (wrong !== null && form.current !== null) focusStepNamed(form.current, wrong)
    if (tallies === null || wrong !== null) return false
    try {
      const { test: counted } = await write.mutateAsync({ testId: test.testId, on, replicates: tallies })
      flushSync(() => {
        discard()
        onCounted(after.every((seeds) => seeds === 0) || isLast(counted, on))
      })
      return true
    } catch (thrown) {
      if (!(thrown instanceof ProblemError)) throw thrown
      return false
    }
  }
  const send = () => void held.holdUntil(writeDown)
  const setCell = (name: string, value: string) => change({ cells: { ...cells, [name]: value } })
  const restIsDead = () =>
    change({
      cells: {
        ...cells,
        ...Object.fromEntries(
          after.map((seeds, index) => {
            const dead = tallies?.[index]?.dead ?? 0
            return [cellName('dead', index), String(Math.max(0, dead + seeds))]
          }),
        ),
      },
    })
  return (
    <StepForm
      label={t('germination.enter-count')}
      className="germ-count stack-3"
      form={form}
      onEnd={send}
      onEndApart={() => undefined}
      onSave={send}
      onMore={() => undefined}
      catches={held.catches}
    >
      <h3>{t('germination.enter-count')}</h3>
      <DayField value={on} onChange={(day) => change({ on: day })} problem={problemAt(write.error, 'on')} />
      {again && <p className="table-field-warning">{t('germination.counted-before', { on: { day: on } })}</p>}
      <table
        className="plain-table germ-grid"
        aria-label={t('germination.taken-out-label')}
        data-next=""
        onKeyDown={upAndDown}
      >
        <thead>
          <tr>
            <th scope="col">{t('germination.taken-out')}</th>
            {test.replicates.map(({ sown }, index) => (
              <th key={columnKey(index)} scope="col" className="number">
                {test.replicates.length === 1 ? '' : `${index + 1} · `}
                {format.number(sown)}
              </th>
            ))}
          </tr>
        </thead>
        <tbody>
          {CATEGORIES.map((category) => (
            <tr key={category}>
              <th scope="row">
                {t(`germination.category-${category}`)}{' '}
                <span className="soft">{t(`germination.category-${category}-means`)}</span>
              </th>
              {test.replicates.map((_, index) => {
                const name = cellName(category, index)
                return (
                  <td key={name}>
                    <input
                      className="table-input number"
                      inputMode="numeric"
                      autoComplete="off"
                      data-step={name}
                      aria-label={cellLabel(t, category, index, test.replicates.length)}
                      aria-invalid={index === tooMany || ('unreadable' in read && read.unreadable === name)}
                      value={cells[name] ?? ''}
                      onChange={(event) => setCell(name, event.target.value)}
                    />
                  </td>
                )
              })}
            </tr>
          ))}
        </tbody>
        <tfoot>
          <tr>
            <th scope="row">{t('germination.still-there')}</th>
            {after.map((seeds, index) => (
              <td key={columnKey(index)} className="number">
                {tallies === null ? '' : format.number(seeds)}
              </td>
            ))}
          </tr>
        </tfoot>
      </table>
      <p role="status" className="germ-count-said strong caution">
        {'unreadable' in read && t('germination.cell-unreadable')}
        {tooMany >= 0 &&
          t('germination.cell-too-many', { replicate: tooMany + 1, more: -(after[tooMany] ?? 0) })}
      </p>
      {!safe && <p className="table-field-warning">{t('germination.not-kept')}</p>}
      {write.error !== null && write.error.problem.field !== 'on' && (
        <ProblemText problem={write.error.problem} />
      )}
      <div className="buttons">
        <ActionButton className="button" off={write.isPending} onClick={send}>
          {t('germination.write-count')}
        </ActionButton>
        <button type="button" className="quiet-button" onClick={restIsDead}>
          {t('germination.rest-dead')}
        </button>
        <span className="soft">{t('germination.enter-anywhere', { key: ORDER_KEY })}</span>
      </div>
    </StepForm>
  )
}

/** The arrows go up and down a replicate's column, from what is normal to what is dead. */
function upAndDown(event: KeyboardEvent<HTMLTableElement>): void {
  const by = { ArrowDown: 1, ArrowUp: -1 }[event.key]
  const cell = event.target instanceof HTMLElement ? event.target.closest('td') : null
  const row = cell?.closest('tr')
  if (by === undefined || cell == null || row == null) return
  const next = by > 0 ? row.nextElementSibling : row.previousElementSibling
  const input = next?.children[cell.cellIndex]?.querySelector('input')
  if (input == null) return
  event.preventDefault()
  input.select()
}

/** The cell that keeps a count from being written down, or null. */
function wrongCell(read: ReturnType<typeof readCells>, tooMany: number): string | null {
  if ('unreadable' in read) return read.unreadable
  return tooMany < 0 ? null : cellName('normal', tooMany)
}

function cellLabel(t: Texts['text'], category: Category, index: number, replicates: number): string {
  const name = t(`germination.category-${category}`)
  return replicates === 1 ? name : t('germination.cell', { category: name, replicate: index + 1 })
}

/** Whether a count on a day is the last one that the test wants. */
function isLast({ due }: TestRecord, on: string): boolean {
  return due !== null && due.which === 'final' && on >= due.on
}
