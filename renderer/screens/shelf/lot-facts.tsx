import { Link } from 'wouter'
import type { LotRecord } from '../../../db/contract/stock-operations.ts'
import { message } from '../../../db/messages/message.ts'
import type { Texts } from '../../../db/messages/texts.ts'
import { lotAddress } from '../../shared/addresses.ts'
import { useFormat } from '../../shared/format/use-format.ts'
import { useTexts } from '../../shared/format/use-texts.ts'
import { FactList } from '../../shared/parts/fact-list.tsx'
import { RowTable } from '../../shared/parts/row-table.tsx'

/** What is known of the lot and the accession, in two columns, then the story and the terms of the gift. */
export function LotFacts({ lot }: { readonly lot: LotRecord }) {
  const { t } = useTexts()
  const format = useFormat()
  const found = [...(lot.cameBack?.answers ?? []), ...(lot.cameBack?.checks ?? [])].join(' ')
  return (
    <section className="pane-part" aria-label={t('shelf.facts')}>
      <FactList
        facts={[
          { name: t('shelf.fact-in-this-lot'), value: lot.quantity.words },
          { name: t('shelf.fact-harvest'), value: lot.harvest },
          {
            name: t('shelf.fact-place'),
            value: lot.place || (lot.heldBy === '' ? t('shelf.nowhere-yet') : ''),
          },
          { name: t('shelf.fact-hundred-seeds'), value: <WeightNow lot={lot} /> },
          { name: t('shelf.fact-given-by'), value: lot.donor || t('shelf.not-known') },
          { name: t('shelf.fact-received'), value: format.day(lot.receivedOn) },
          { name: t('shelf.fact-grown-by'), value: lot.grower },
          { name: t('shelf.fact-grown-at'), value: lot.grownAt },
          { name: t('keeping.fact'), value: keptInWords(lot, t) },
          { name: t('shelf.fact-accession'), value: lot.accessionNumber },
          {
            name: t('shelf.fact-generation'),
            value: t('shelf.generation', { generation: lot.generation }),
          },
          { name: t('shelf.fact-packet'), value: packetInWords(lot, t) },
          {
            name: t('shelf.fact-measured-by'),
            value: t(lot.basis === 'weighed' ? 'shelf.by-weighing' : 'shelf.by-counting'),
          },
          { name: t('shelf.fact-held-by'), value: heldBy(lot, t) },
        ]}
      />
      {lot.donorWords !== '' && <Prose name={t('shelf.donors-words')} text={lot.donorWords} />}
      {lot.story !== '' && <Prose name={t('shelf.story')} text={lot.story} />}
      {found !== '' && <Prose name={t('returns.came-back')} text={found} />}
      {lot.terms !== '' && <Prose name={t('shelf.terms')} text={lot.terms} />}
    </section>
  )
}

function WeightNow({ lot }: { readonly lot: LotRecord }) {
  const { words, basis } = lot.weight
  return basis === 'crop-default' ? <span className="card-default">{words}</span> : words
}

/** What a packet of the lot holds, such as '25 seeds'; empty where that was not said. */
export function packetInWords({ packetSeeds, unit }: LotRecord, t: Texts['text']): string {
  return packetSeeds === null ? '' : t('amount.seeds', { count: packetSeeds, unit: unit.one })
}

/** How the accession was bred and whether it is kept, since when and why; empty where nobody said. */
function keptInWords({ keeping: { words, on, reason } }: LotRecord, t: Texts['text']): string {
  if (words === '') return ''
  return t('keeping.fact-value', {
    words,
    day: { day: on },
    reason: reason === '' ? 'none' : 'some',
    why: reason,
  })
}

function heldBy({ heldBy: holder, heldSince }: LotRecord, t: Texts['text']): string {
  if (holder === '') return ''
  return heldSince === '' ? holder : t('shelf.held-since', { holder, since: { day: heldSince } })
}

function Prose({ name, text }: { readonly name: string; readonly text: string }) {
  return (
    <div className="stack-1 card-prose">
      <h3>{name}</h3>
      <p>{text}</p>
    </div>
  )
}

/** Where the lot came from, and the other lots of its accession. */
export function LotFamily({ lot }: { readonly lot: LotRecord }) {
  const { t, pieces } = useTexts()
  const others = lot.siblings
  const format = useFormat()
  if (others.length === 0 && lot.parents.length === 0) return null
  return (
    <section className="pane-part">
      <h3>{t('shelf.lots-of', { accession: lot.accessionNumber })}</h3>
      {lot.parents.map((parent) => (
        <p key={`${parent.relation} ${parent.lotId}`}>
          {pieces(message('shelf.parent', { relation: parent.relation, lot: parent.lotNumber }), {
            link: (lot) => (
              <Link key="link" href={lotAddress(parent.lotId)}>
                {lot}
              </Link>
            ),
          })}
        </p>
      ))}
      {others.length > 0 && (
        <RowTable
          label={t('shelf.other-lots')}
          rows={others}
          keyOf={({ lotId }) => lotId}
          columns={[
            [t('shelf.lot'), ({ lotId, lotNumber }) => <Link href={lotAddress(lotId)}>{lotNumber}</Link>],
            [t('shelf.role'), ({ role }) => t(`shelf.role-${role}`)],
            [t('shelf.fact-harvest'), ({ harvest }) => harvest],
            [t('shelf.holds'), ({ quantity }) => quantity.words],
            [t('shelf.living'), ({ living }) => format.number(living), 'number'],
          ]}
        />
      )}
    </section>
  )
}
