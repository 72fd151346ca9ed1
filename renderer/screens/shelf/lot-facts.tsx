import { Link } from 'wouter'
import type { LotRecord } from '../../../db/contract/stock-operations.ts'
import { lotAddress } from '../../shared/addresses.ts'
import { useFormat } from '../../shared/format/use-format.ts'
import { ROLE_WORDS } from '../../shared/format/words.ts'
import { FactList } from '../../shared/parts/fact-list.tsx'
import { RowTable } from '../../shared/parts/row-table.tsx'

/** What is known of the lot and the accession, in two columns, then the story and the terms of the gift. */
export function LotFacts({ lot }: { readonly lot: LotRecord }) {
  const format = useFormat()
  return (
    <section className="pane-part" aria-label="Facts">
      <FactList
        facts={[
          { name: 'In this lot', value: lot.quantity.words },
          { name: 'Harvest', value: lot.harvest },
          { name: 'Place', value: lot.place || 'nowhere yet' },
          { name: 'Hundred seeds', value: <WeightNow lot={lot} /> },
          { name: 'Given by', value: lot.donor || 'not known' },
          { name: 'Received', value: format.day(lot.receivedOn) },
          { name: 'Grown by', value: lot.grower },
          { name: 'Grown at', value: lot.grownAt },
          { name: 'Accession', value: lot.accessionNumber },
          {
            name: 'Generation',
            value: lot.generation === 0 ? 'as given' : `${lot.generation} since the gift`,
          },
          { name: 'Packet', value: packetInWords(lot) },
          { name: 'Measured by', value: lot.basis === 'weighed' ? 'weighing' : 'counting' },
          { name: 'Held by', value: heldBy(lot, format.day) },
        ]}
      />
      {lot.donorWords !== '' && <Prose name="In the donor’s words" text={lot.donorWords} />}
      {lot.story !== '' && <Prose name="Its story" text={lot.story} />}
      {lot.terms !== '' && <Prose name="The donor asks" text={lot.terms} />}
    </section>
  )
}

function WeightNow({ lot }: { readonly lot: LotRecord }) {
  const { words, basis } = lot.weight
  return basis === 'crop-default' ? <span className="card-default">{words}</span> : words
}

/** What a packet of the lot holds, such as '25 seeds'; empty where that was not said. */
export function packetInWords({ packetSeeds, unit }: LotRecord): string {
  return packetSeeds === null ? '' : `${packetSeeds} ${packetSeeds === 1 ? unit.one : unit.many}`
}

function heldBy({ heldBy: holder, heldSince }: LotRecord, day: (iso: string) => string): string {
  if (holder === '') return ''
  return heldSince === '' ? holder : `${holder}, since ${day(heldSince)}`
}

function Prose({ name, text }: { readonly name: string; readonly text: string }) {
  return (
    <div className="stack-1 card-prose">
      <h3>{name}</h3>
      <p>{text}</p>
    </div>
  )
}

const RELATION_WORDS: Record<LotRecord['parents'][number]['relation'], string> = {
  grown: 'grown from',
  split: 'taken out of',
  joined: 'joined with',
}

/** Where the lot came from, and the other lots of its accession. */
export function LotFamily({ lot }: { readonly lot: LotRecord }) {
  const others = lot.siblings
  const format = useFormat()
  if (others.length === 0 && lot.parents.length === 0) return null
  return (
    <section className="pane-part">
      <h3>Lots of {lot.accessionNumber}</h3>
      {lot.parents.map((parent) => (
        <p key={`${parent.relation} ${parent.lotId}`}>
          This lot was {RELATION_WORDS[parent.relation]}{' '}
          <Link href={lotAddress(parent.lotId)}>{parent.lotNumber}</Link>.
        </p>
      ))}
      {others.length > 0 && (
        <RowTable
          label="Other lots of the accession"
          rows={others}
          keyOf={({ lotId }) => lotId}
          columns={[
            ['Lot', ({ lotId, lotNumber }) => <Link href={lotAddress(lotId)}>{lotNumber}</Link>],
            ['Role', ({ role }) => ROLE_WORDS[role]],
            ['Harvest', ({ harvest }) => harvest],
            ['Holds', ({ quantity }) => quantity.words],
            ['Living', ({ living }) => format.number(living), 'number'],
          ]}
        />
      )}
    </section>
  )
}
