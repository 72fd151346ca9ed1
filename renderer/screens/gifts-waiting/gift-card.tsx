import { type FC, type RefObject, useEffect, useRef, useState } from 'react'
import { Link } from 'wouter'
import type { WaitingGift } from '../../../db/contract/intake-operations.ts'
import { lotAddress } from '../../shared/addresses.ts'
import { useOpenForm } from '../../shared/card-form/use-open-form.ts'
import { isBegun } from '../../shared/card-form/use-saved-form.ts'
import { useRead } from '../../shared/client/use-read.ts'
import { focusIsFree } from '../../shared/focus/lost-focus.ts'
import { useFormat } from '../../shared/format/use-format.ts'
import { capital } from '../../shared/format/words.ts'
import { LabelPrint } from '../../shared/labels/label-print.tsx'
import { Card } from '../../shared/panes/card.tsx'
import { focusNext } from '../../shared/panes/use-opening.ts'
import { FactList } from '../../shared/parts/fact-list.tsx'
import { SeedBar } from '../../shared/seed-bar/seed-bar.tsx'
import { StateMark } from '../../shared/state-mark/state-mark.tsx'
import { AcceptForm, DeclineForm, type GiftFormProps, WaitForm } from './gift-forms.tsx'
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

/** What became of a gift that was taken in: its lot as it stands now, and how often it went out. */
function Became({ lotId }: { readonly lotId: number }) {
  const lot = useRead('lot.get', { lotId }).data
  const [printing, setPrinting] = useState(false)
  if (lot === undefined) return null
  const out = lot.ledger.filter(({ kind, takenBack }) => kind === 'withdrawal' && !takenBack).length
  return (
    <section className="pane-part" aria-label="What became of it">
      <h3>What became of it</h3>
      <p>
        <Link href={lotAddress(lotId)}>{lot.lotNumber}</Link>
        {lot.place === '' ? '' : ` in ${lot.place}`} holds {lot.quantity.words}.{' '}
        {out === 0 ? 'Nothing of it was handed out yet.' : `It was handed out ${timesInWords(out)}.`}
      </p>
      {lot.quarantined && <StateMark mark="quarantine" />}
      <SeedBar {...lot.stock} large />
      <p>{lot.stock.sentence}</p>
      {printing ? (
        <LabelPrint title="Its label" lotIds={[lotId]} contents="" onClose={() => setPrinting(false)} />
      ) : (
        <p>
          <button type="button" className="quiet-button" onClick={() => setPrinting(true)}>
            Print its label
          </button>
        </p>
      )}
    </section>
  )
}

function timesInWords(times: number): string {
  return times === 1 ? 'once' : `${times} times`
}

const DOINGS: readonly { readonly name: string; readonly word: string; readonly form: FC<GiftFormProps> }[] =
  [
    { name: 'accept', word: 'Take it in', form: AcceptForm },
    { name: 'wait', word: 'Let it wait', form: WaitForm },
    { name: 'decline', word: 'Decline', form: DeclineForm },
  ]

/** What can be done with a gift that was offered; each opens its form right here. */
function GiftDoing({ gift }: { readonly gift: WaitingGift }) {
  const { open, button, close } = useOpenForm<string>()
  const draftName = (name: string) => `gift/${gift.giftId}/${name}`
  const OpenForm = DOINGS.find(({ name }) => name === open)?.form
  return (
    <section className="pane-part" aria-label="What to do with it">
      <div className="buttons">
        {DOINGS.map(({ name, word }) => (
          <button
            key={name}
            type="button"
            className={name === 'accept' && gift.waitsFor.length === 0 ? 'button' : 'quiet-button'}
            {...(name === 'accept' ? { 'data-next': '' } : {})}
            {...button(name)}
          >
            {word}
            {open !== name && isBegun(draftName(name)) && <span> (begun)</span>}
          </button>
        ))}
      </div>
      {OpenForm !== undefined && open !== null && (
        <OpenForm key={open} gift={gift} draftName={draftName(open)} onClose={() => close(open)} />
      )}
    </section>
  )
}
