import { type RefObject, useEffect, useRef } from 'react'
import type { WaitingGift } from '../../../db/contract/waiting-operations.ts'
import { focusIsFree } from '../../shared/focus/lost-focus.ts'
import { useFormat } from '../../shared/format/use-format.ts'
import { capital } from '../../shared/format/words.ts'
import { Card } from '../../shared/panes/card.tsx'
import { focusNext } from '../../shared/panes/use-opening.ts'
import { FactList } from '../../shared/parts/fact-list.tsx'
import { Became } from './became.tsx'
import { GiftDoing } from './gift-doing.tsx'
import { GiftWay } from './gift-way.tsx'
import { cautionsInWords } from './gift-words.ts'
import { OpenSteps } from './open-steps.tsx'

/** A gift as it was offered, its way, and what is to be done with it. */
export function GiftCard({ gift }: { readonly gift: WaitingGift }) {
  const format = useFormat()
  const card = useRef<HTMLElement>(null)
  useKeepFocus(card, `${gift.state} ${gift.waitsFor.length}`)
  const donor = gift.donor === '' ? 'somebody unknown' : gift.donor
  return (
    <Card ref={card} className="card gift-card flap" name={`${gift.variety}, a gift of ${donor}`}>
      <header className="card-head">
        <h2 tabIndex={-1}>{gift.variety}</h2>
        <p>
          {gift.crop} · from {donor} · {gift.amount}
        </p>
      </header>
      <GiftWay gift={gift} />
      {gift.state === 'offered' && (
        <>
          <section className="pane-part" aria-label="What it waits for">
            <h3>What it waits for</h3>
            <OpenSteps gift={gift} />
          </section>
          <GiftDoing gift={gift} />
        </>
      )}
      {gift.lotId !== null && <Became lotId={gift.lotId} />}
      {gift.done.length > 0 && (
        <section className="pane-part" aria-label="What is done">
          <h3>What is done</h3>
          <ul className="stack-3 dated">
            {gift.done.map(({ step, words, on, note }) => (
              <li key={step}>
                <span className="soft">{format.day(on)}</span>
                <span>
                  {capital(words)}
                  {note === '' ? '' : `: ${note}`}
                </span>
              </li>
            ))}
          </ul>
        </section>
      )}
      <AsOffered gift={gift} />
    </Card>
  )
}

function AsOffered({ gift }: { readonly gift: WaitingGift }) {
  const format = useFormat()
  const { harvest, sample, grownAt, terms, donorWords, story } = gift.gift
  return (
    <section className="pane-part" aria-label="As it was offered">
      <h3>As it was offered</h3>
      <FactList
        facts={[
          { name: 'Offered', value: format.day(gift.offeredOn) },
          { name: 'Amount', value: gift.amount },
          { name: 'Harvest', value: harvest === '' ? 'year unknown' : harvest },
          { name: 'Counted sample', value: sample },
          { name: 'Grown', value: grownAt },
          { name: 'To be careful about', value: cautionsInWords(gift) },
          { name: 'What the donor asks for', value: terms },
          { name: 'In the donor’s words', value: donorWords },
          { name: 'Its story', value: story },
        ]}
      />
    </section>
  )
}

/** A button that was pressed may be gone once it did its work: the focus goes on to what is next. */
function useKeepFocus(card: RefObject<HTMLElement | null>, standing: string) {
  const before = useRef(standing)
  useEffect(() => {
    if (before.current === standing) return
    before.current = standing
    if (focusIsFree()) focusNext(card.current)
  }, [card, standing])
}
