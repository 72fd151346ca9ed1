import { type RefObject, useEffect, useRef, useState } from 'react'
import { Link } from 'wouter'
import type { WaitingGift } from '../../../db/contract/intake-operations.ts'
import { useRead } from '../../shared/client/use-read.ts'
import { focusIsFree } from '../../shared/focus/lost-focus.ts'
import { PaneRows } from '../../shared/panes/pane-rows.tsx'
import { useListAndCard } from '../../shared/panes/use-list-and-card.ts'
import { ProblemText } from '../../shared/parts/problem-text.tsx'
import { SelectField } from '../../shared/table-form/fields.tsx'
import { type Asking, DonorAnswer, DonorQuestion } from './donor-question.tsx'
import { giftAddress } from './gift-address.ts'
import { GiftCard } from './gift-card.tsx'
import { type Shown, standingInWords } from './gift-words.ts'
import './gifts-waiting.css'
import { QuarantinedLots } from './quarantined-lots.tsx'

const SHOWN: readonly { readonly value: Shown; readonly label: string }[] = [
  { value: 'offered', label: 'waiting' },
  { value: 'accepted', label: 'taken in' },
  { value: 'declined', label: 'declined' },
  { value: 'all', label: 'all of them' },
]

const NOBODY_ASKS: Asking = { text: '', personId: null }

/** Gifts that wait: a list on the left, and on the right the card of the one that is chosen. */
export function GiftsWaitingScreen({ giftId }: { readonly giftId?: number }) {
  const [shown, setShown] = useState<Shown>('offered')
  const [asking, setAsking] = useState(NOBODY_ASKS)
  const list = useRead('gift.list', {})
  const left = useRef<HTMLElement>(null)
  const all = list.data?.gifts
  const gifts = all?.filter(isListed(shown, asking.personId)) ?? []
  const chosen = all?.find((gift) => gift.giftId === giftId)
  const first = gifts[0]
  const { card, openCard } = useListAndCard(giftId !== undefined, first && giftAddress(first.giftId))
  useArrival(left, all !== undefined && (first === undefined || giftId !== undefined))
  if (list.error !== null) return <ProblemText problem={list.error.problem} />
  if (list.data === undefined) return <p className="soft waiting">Opening…</p>
  return (
    <div className="panes">
      <section className="panes-list" aria-label="List" ref={left}>
        <div className="head-row">
          <h1>Gifts waiting</h1>
          <Link href="/take-in">Back to Take in</Link>
        </div>
        <div className="gifts-ask">
          <DonorQuestion asking={asking} onChange={setAsking} />
          {asking.personId === null ? (
            <SelectField label="Show" value={shown} options={SHOWN} onChange={setShown} />
          ) : (
            <button type="button" className="word-button" onClick={() => setAsking(NOBODY_ASKS)}>
              back to all that wait
            </button>
          )}
        </div>
        {gifts.length === 0 && asking.personId === null && <NoGifts shown={shown} />}
        <PaneRows label="Gifts" rows={gifts.map(giftRow)} onOpen={openCard} />
        {asking.personId === null ? (
          <QuarantinedLots lots={list.data.quarantined} />
        ) : (
          <DonorAnswer name={asking.text} personId={asking.personId} gifts={gifts} />
        )}
      </section>
      <section className="panes-card" aria-label="Gift" ref={card}>
        {chosen !== undefined && <GiftCard key={chosen.giftId} gift={chosen} />}
        {chosen === undefined && giftId !== undefined && <p>That gift is not in the list.</p>}
      </section>
    </div>
  )
}

function isListed(shown: Shown, donorId: number | null) {
  return (gift: WaitingGift) =>
    donorId === null ? shown === 'all' || gift.state === shown : gift.donorId === donorId
}

function NoGifts({ shown }: { readonly shown: Shown }) {
  if (shown !== 'offered') return <p className="soft">No gift is listed here yet.</p>
  return (
    <p>
      No gift waits. At the table, <Link href="/take-in">Take in</Link> keeps a gift for later where it has to
      be dried, frozen, tested, named or looked up first.
    </p>
  )
}

function giftRow(gift: WaitingGift) {
  return {
    address: giftAddress(gift.giftId),
    content: (
      <>
        <span className="strong">{gift.variety}</span>
        <span className="soft">
          {gift.crop} · from {gift.donor === '' ? 'somebody unknown' : gift.donor}
        </span>
        <span>
          {gift.waitsFor.some(({ late }) => late) && <strong className="late-mark">late</strong>}
          {standingInWords(gift)}
        </span>
      </>
    ),
  }
}

/** On arrival the focus goes to the chosen gift in the list, unless the keeper is somewhere already. */
function useArrival(left: RefObject<HTMLElement | null>, ready: boolean) {
  useEffect(() => {
    if (!ready) return
    if (focusIsFree() || document.activeElement?.matches('main, h1') === true)
      left.current?.querySelector<HTMLElement>('[aria-current]')?.focus()
  }, [left, ready])
}
