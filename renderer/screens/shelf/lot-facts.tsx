import type { LotRecord } from '../../../db/contract/shelf-operations.ts'
import { useFormat } from '../../shared/format/use-format.ts'
import { FactList } from '../../shared/parts/fact-list.tsx'

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
          { name: 'Packet', value: packetOf(lot) },
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

function packetOf({ packetSeeds, unit }: LotRecord): string {
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
