import { useState } from 'react'
import type { Value } from '../../../db/contract/contract.ts'
import type { PrintKind } from '../../../db/contract/print-operations.ts'
import { PRINT_KINDS } from '../../../db/domain/shared/closed-sets.ts'
import { useRead } from '../../shared/client/use-read.ts'
import { useTexts } from '../../shared/format/use-texts.ts'
import { ProblemText } from '../../shared/parts/problem-text.tsx'
import { FireSheetPart } from './fire-sheet-part.tsx'
import { LetterWords } from './letter-words.tsx'
import { Catalogue, Ruler, YearReport } from './made-when-asked.tsx'
import './print.css'
import { PrintHistory } from './print-history.tsx'
import { PrintRun } from './print-run.tsx'
import { TrayGroup } from './tray-group.tsx'

/** What is printed, or looked at, without waiting in the tray. */
const OTHERS = [
  { name: 'words', Part: LetterWords },
  { name: 'history', Part: PrintHistory },
  { name: 'catalogue', Part: Catalogue },
  { name: 'year-report', Part: YearReport },
  { name: 'fire-sheet', Part: FireSheetPart },
  { name: 'ruler', Part: Ruler },
] as const
type Shown = PrintKind | (typeof OTHERS)[number]['name']

/** The print tray: what waits on the left, the pages as they will come out on the right. */
export function PrintScreen() {
  const tray = useRead('tray.list', {})
  if (tray.error !== null) return <ProblemText problem={tray.error.problem} />
  return tray.data === undefined ? null : <Tray tray={tray.data} />
}

/** What is shown stays until the keeper picks another: it must not change while they read as things come and go. */
function Tray({ tray }: { readonly tray: Value<'tray.list'> }) {
  const { t } = useTexts()
  const { groups } = tray
  const fireSheetDue = useRead('fire-sheet.get', {}).data?.due ?? false
  const [shown, setShown] = useState<Shown>(groups[0]?.kind ?? 'label')
  const [leftOut, setLeftOut] = useState<ReadonlySet<number>>(new Set())
  const itemsOf = (kind: PrintKind) => groups.find((group) => group.kind === kind)?.items ?? []
  const chosen = isKind(shown)
    ? itemsOf(shown).filter(({ itemId, heldBack }) => !leftOut.has(itemId) && heldBack === null)
    : []
  const toggle = (itemId: number) => {
    const next = new Set(leftOut)
    if (!next.delete(itemId)) next.add(itemId)
    setLeftOut(next)
  }
  return (
    <div className="panes print">
      <div className="panes-list">
        <h1>{t('print.title')}</h1>
        {groups.length === 0 && <p className="soft">{t('print.nothing-waits')}</p>}
        <nav className="pane-rows" aria-label={t('print.what')}>
          {PRINT_KINDS.map((kind) => (
            <Kind
              key={kind}
              name={t(`print.${kind}`)}
              waiting={itemsOf(kind).length}
              here={shown === kind}
              onPick={() => setShown(kind)}
            />
          ))}
          {OTHERS.map(({ name }) => (
            <Kind
              key={name}
              name={t(`print.${name}`)}
              due={name === 'fire-sheet' && fireSheetDue}
              here={shown === name}
              onPick={() => setShown(name)}
            />
          ))}
        </nav>
        {isKind(shown) && (
          <TrayGroup
            key={shown}
            kind={shown}
            items={itemsOf(shown)}
            leftOut={leftOut}
            notWrittenTo={shown === 'letter' ? tray.leftOut : []}
            lettersSince={tray.lettersSince}
            onToggle={toggle}
          />
        )}
      </div>
      <div className="panes-card stack-4">
        {isKind(shown) && chosen.length > 0 && (
          <PrintRun key={shown} kind={shown} items={chosen} known={tray} />
        )}
        {isKind(shown) && chosen.length === 0 && (
          <p className="soft">
            {itemsOf(shown).length === 0 ? t(`print.${shown}-comes`) : t('print.tick-some')}
          </p>
        )}
        {OTHERS.map(({ name, Part }) => shown === name && <Part key={name} />)}
      </div>
    </div>
  )
}

function isKind(shown: Shown): shown is PrintKind {
  return PRINT_KINDS.some((kind) => kind === shown)
}

interface KindProps {
  readonly name: string
  readonly waiting?: number
  /** Whether it is time to print it again. */
  readonly due?: boolean
  readonly here: boolean
  readonly onPick: () => void
}

function Kind({ name, waiting, due = false, here, onPick }: KindProps) {
  const { t } = useTexts()
  return (
    <button
      type="button"
      className="pane-row choice print-kind"
      {...(here ? { 'aria-current': 'true' as const } : {})}
      onClick={onPick}
    >
      <span>{name}</span>
      {due && <span className="print-kind-waiting">{t('print.due')}</span>}
      {waiting !== undefined && (
        <span className={waiting === 0 ? 'soft' : 'print-kind-waiting'}>
          {t('print.waiting', { waiting })}
        </span>
      )}
    </button>
  )
}
