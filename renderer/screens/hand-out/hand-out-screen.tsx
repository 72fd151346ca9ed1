import { useState } from 'react'
import { Link } from 'wouter'
import { packetsInWords } from '../../../db/domain/amounts/packets.ts'
import { GatheredLines } from '../../shared/table-form/gathered-lines.tsx'
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
  return (
    <TableFrame
      label="Hand out"
      table={table}
      onEnd={work.listLine}
      onEndApart={packets.backToLine}
      onSave={work.save}
      onMore={() => table.focus('promised')}
      catches={work.catches}
      head={
        <>
          <h1 className="only-aloud">Hand out</h1>
          <p className="table-beside row">
            <Link href="/hand-out/paper">Type in a paper sheet</Link>
          </p>
        </>
      }
      inWords={visitInWords}
      more="what comes back"
      besideLabel="This visit"
      beside={
        <>
          <GatheredLines
            work={packets}
            nameOf={(line) => line.lot?.variety ?? line.text}
            inWords={(line) => (
              <PacketInWords line={line} previewed={previewed.ofLine.get(line.id)} reason={draft.reason} />
            )}
            whileEmpty={
              last ? (
                <HandedOutList last={last} />
              ) : (
                <p className="soft">
                  The packets of this visit gather here. Enter after the amount lists one.
                </p>
              )
            }
            total={(listed) => packetsInWords(listed.map(({ amount }) => amount))}
          />
          <VisitTermsFields draft={draft} today={open.today} onChange={table.set} />
        </>
      }
      saveWord="Save the visit"
    >
      <PersonFields
        label="Who takes it?"
        nobody="Nobody is named"
        nobodyMeans="The packets go out without a name."
        person={draft.member}
        onChange={(change) => table.setIn('member', change)}
        problems={shown.problems}
      />
      <PacketCard work={work} />
    </TableFrame>
  )
}

function visitInWords({ member, lines: { listed } }: HandOutDraft): string {
  const who = personNamed(member, 'a member')
  if (listed.length === 0) return `${who}, no packet listed yet`
  return `${packetsInWords(listed.map(({ amount }) => amount))} for ${who}`
}
