import { useState } from 'react'
import { Link } from 'wouter'
import type { Texts } from '../../../db/messages/texts.ts'
import { useTexts } from '../../shared/format/use-texts.ts'
import { GatheredLines } from '../../shared/table-form/gathered-lines.tsx'
import { personNamed } from '../../shared/table-form/person-draft.ts'
import { PersonFields } from '../../shared/table-form/person-fields.tsx'
import { type OpenTable, TableDraft } from '../../shared/table-form/table-draft.tsx'
import { LineCard, TableFrame } from '../../shared/table-form/table-frame.tsx'
import { VisitPins } from '../../shared/table-form/visit-pins.tsx'
import { DecisionButtons, DecisionFields } from './gift-decision-fields.tsx'
import { GiftFields, MoreFields } from './gift-fields.tsx'
import { GiftInWords } from './gift-in-words.tsx'
import './take-in.css'
import { emptyVisit, isBlankVisit, type TakeInDraft } from './take-in-draft.ts'
import { type SavedVisit, TakenIn } from './taken-in.tsx'
import { useTakeIn } from './use-take-in.ts'

const RULES = { kind: 'take-in', blank: (key: string) => emptyVisit(key), isBlank: isBlankVisit } as const

/** Take in: a donor's gifts at the table, from the first envelope to their numbers. */
export function TakeInScreen() {
  const [saved, setSaved] = useState<SavedVisit | null>(null)
  return (
    <TableDraft<TakeInDraft> rules={RULES}>
      {(open) =>
        saved === null ? (
          <TakeInTable open={open} onSaved={setSaved} />
        ) : (
          <TakenIn visit={saved} onNextDonor={() => setSaved(null)} />
        )
      }
    </TableDraft>
  )
}

interface TakeInTableProps {
  readonly open: OpenTable<TakeInDraft>
  readonly onSaved: (saved: SavedVisit) => void
}

/** The donor, the gift being typed, and the visit so far. */
function TakeInTable({ open, onSaved }: TakeInTableProps) {
  const { t } = useTexts()
  const { table, gifts, decide, openMore, save } = useTakeIn(open, onSaved)
  const { draft, shown } = table
  const { line } = draft.gifts
  const part = { line, onChange: gifts.setLine, problems: shown.problems }
  return (
    <TableFrame
      label={t('take-in.title')}
      table={table}
      onEnd={gifts.listOrShow}
      onEndApart={gifts.backToLine}
      onSave={save}
      onMore={openMore}
      catches={table.held.catches}
      head={
        <>
          <h1 className="only-aloud">{t('take-in.title')}</h1>
          <p className="table-beside row">
            <Link href="/take-in/waiting">{t('take-in.waiting')}</Link>
            <Link href="/take-in/list">{t('take-in.from-list')}</Link>
          </p>
        </>
      }
      inWords={(visit) => visitInWords(visit, t)}
      more={t('take-in.more')}
      besideLabel={t('take-in.visit')}
      beside={
        <>
          <VisitPins
            pinned={draft}
            dayLabel={t('take-in.day')}
            today={open.today}
            onChange={(change) => open.visit.dispatch((was) => ({ ...was, ...change }))}
          />
          <GatheredLines
            work={gifts}
            nameOf={(gift) => gift.variety}
            inWords={(gift) => <GiftInWords gift={gift} thisYear={open.thisYear} />}
            whileEmpty={<p className="soft">{t('take-in.gathers')}</p>}
            total={({ length }) => t('take-in.amount-of-gifts', { count: length })}
          />
        </>
      }
      saveWord={t('take-in.save')}
    >
      <PersonFields
        label={t('take-in.who')}
        nobody={t('take-in.nobody')}
        nobodyMeans={t('take-in.nobody-means')}
        person={draft.donor}
        onChange={(change) => table.setIn('donor', change)}
        problems={shown.problems}
      />
      <LineCard
        lines={draft.gifts}
        noun="Gift"
        onList={gifts.listOrShow}
        doing={
          <>
            <DecisionButtons decision={line.decision} onDecide={decide} />
            {!line.more && (
              <button type="button" className="word-button table-button" onClick={openMore}>
                {t('take-in.more')}
              </button>
            )}
          </>
        }
      >
        <GiftFields {...part} thisYear={open.thisYear} />
        {line.more && <MoreFields {...part} />}
        <DecisionFields {...part} />
      </LineCard>
    </TableFrame>
  )
}

function visitInWords({ donor, gifts: { listed } }: TakeInDraft, t: Texts['text']): string {
  const who = personNamed(donor, t('take-in.donor'))
  return listed.length === 0
    ? t('take-in.not-listed', { who })
    : t('take-in.visit-so-far', { count: listed.length, who })
}
