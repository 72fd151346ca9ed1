import { useState } from 'react'
import { Link } from 'wouter'
import { packetsIn } from '../../../db/domain/amounts/packets.ts'
import { type Message, message } from '../../../db/messages/message.ts'
import { useTexts } from '../../shared/format/use-texts.ts'
import { GatheredLines } from '../../shared/table-form/gathered-lines.tsx'
import type { LotLine } from '../../shared/table-form/lot-line.ts'
import { personNamed } from '../../shared/table-form/person-draft.ts'
import { PersonFields } from '../../shared/table-form/person-fields.tsx'
import { type OpenTable, TableDraft } from '../../shared/table-form/table-draft.tsx'
import { TableFrame } from '../../shared/table-form/table-frame.tsx'
import './hand-out.css'
import { emptyHandOut, type HandOutDraft, isBlankHandOut } from './hand-out-draft.ts'
import { type HandedOut, HandedOutList } from './handed-out.tsx'
import { PacketCard, PacketInWords } from './packet-card.tsx'
import { useHandOut } from './use-hand-out.ts'
import { VisitTermsFields } from './visit-terms.tsx'

const RULES = { kind: 'hand-out', blank: emptyHandOut, isBlank: isBlankHandOut } as const

/** Hand out: a member's packets at the table, and what is left of each lot. */
export function HandOutScreen() {
  const [last, setLast] = useState<HandedOut | null>(null)
  return (
    <TableDraft<HandOutDraft> rules={RULES}>
      {(open) => <HandOutTable open={open} last={last} onSaved={setLast} />}
    </TableDraft>
  )
}

interface HandOutTableProps {
  readonly open: OpenTable<HandOutDraft>
  readonly last: HandedOut | null
  readonly onSaved: (saved: HandedOut) => void
}

/** The member, the packet being typed, and the visit so far. */
function HandOutTable({ open, last, onSaved }: HandOutTableProps) {
  const work = useHandOut(open, onSaved)
  const { table, packets, previewed } = work
  const { draft, shown } = table
  const { t } = useTexts()
  return (
    <TableFrame
      label={t('hand-out.title')}
      table={table}
      onEnd={work.listLine}
      onEndApart={packets.backToLine}
      onSave={work.save}
      onMore={() => table.focus('promised')}
      catches={work.catches}
      head={
        <>
          <h1 className="only-aloud">{t('hand-out.title')}</h1>
          <p className="table-beside row">
            <Link href="/hand-out/paper">{t('hand-out.paper-sheet')}</Link>
            <Link href="/hand-out/institutions">{t('elsewhere.institutions')}</Link>
          </p>
        </>
      }
      inWords={visitInWords}
      more={t('hand-out.more')}
      besideLabel={t('hand-out.this-visit')}
      beside={
        <>
          <GatheredLines
            work={packets}
            nameOf={(line) => line.lot?.variety ?? line.text}
            inWords={(line) => (
              <PacketInWords line={line} previewed={previewed.ofLine.get(line.id)} reason={draft.reason} />
            )}
            whileEmpty={
              last ? <HandedOutList last={last} /> : <p className="soft">{t('hand-out.gathers')}</p>
            }
            total={(listed) => message('hand-out.packets', { packets: packetsOf(listed) })}
          />
          <VisitTermsFields draft={draft} today={open.today} onChange={table.set} />
        </>
      }
      saveWord={t('hand-out.save')}
    >
      <PersonFields
        label={t('hand-out.who')}
        nobody={t('hand-out.nobody')}
        nobodyMeans={t('hand-out.nobody-means')}
        person={draft.member}
        onChange={(change) => table.setIn('member', change)}
        problems={shown.problems}
      />
      <PacketCard work={work} />
    </TableFrame>
  )
}

function visitInWords({ member, lines: { listed } }: HandOutDraft): Message {
  const who = personNamed(member, '') || message('hand-out.a-member')
  return listed.length === 0
    ? message('hand-out.unlisted', { who })
    : message('hand-out.visit', { packets: packetsOf(listed), who })
}

function packetsOf(listed: readonly LotLine[]): number {
  return packetsIn(listed.map(({ amount }) => amount))
}
