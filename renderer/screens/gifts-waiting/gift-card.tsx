import { type FC, type ReactNode, type RefObject, useEffect, useRef, useState } from 'react'
import { Link } from 'wouter'
import type { WaitingGift } from '../../../db/contract/intake-operations.ts'
import { limitsTold, NO_LIMITS } from '../../../db/domain/terms/gift-limits.ts'
import { message } from '../../../db/messages/message.ts'
import { lotAddress } from '../../shared/addresses.ts'
import { useOpenForm } from '../../shared/card-form/use-open-form.ts'
import { isBegun } from '../../shared/card-form/use-saved-form.ts'
import { useToday } from '../../shared/card-form/use-today.ts'
import { useRead } from '../../shared/client/use-read.ts'
import { focusIsFree } from '../../shared/focus/lost-focus.ts'
import { useFormat } from '../../shared/format/use-format.ts'
import { useTexts } from '../../shared/format/use-texts.ts'
import { capital } from '../../shared/format/words.ts'
import { LabelPrint } from '../../shared/labels/label-print.tsx'
import { Card } from '../../shared/panes/card.tsx'
import { focusNext } from '../../shared/panes/use-opening.ts'
import { FactList } from '../../shared/parts/fact-list.tsx'
import { SeedBar } from '../../shared/seed-bar/seed-bar.tsx'
import { StateMark } from '../../shared/state-mark/state-mark.tsx'
import { AcceptForm, DeclineForm, type GiftFormProps, WaitForm } from './gift-forms.tsx'
import { GiftWay } from './gift-way.tsx'
import { cautionsInWords, donorOf } from './gift-words.ts'
import { OpenSteps } from './open-steps.tsx'

/** A gift as it was offered, its way, and what is to be done with it. */
export function GiftCard({ gift }: { readonly gift: WaitingGift }) {
  const format = useFormat()
  const { t } = useTexts()
  const card = useRef<HTMLElement>(null)
  useKeepFocus(card, `${gift.state} ${gift.waitsFor.length}`)
  const { variety, crop } = gift
  const donor = donorOf(gift)
  return (
    <Card ref={card} className="card gift-card flap" name={t('gifts.card', { variety, donor })}>
      <header className="card-head">
        <h2 tabIndex={-1}>{variety}</h2>
        <p>
          {t('gifts.crop-from', { crop, donor })} · <bdi>{gift.amount}</bdi>
        </p>
      </header>
      <GiftWay gift={gift} />
      {gift.state === 'offered' && (
        <>
          <section className="pane-part" aria-label={t('gifts.waits-for')}>
            <h3>{t('gifts.waits-for')}</h3>
            <OpenSteps gift={gift} />
          </section>
          <GiftDoing gift={gift} />
        </>
      )}
      {gift.lotId !== null && <Became lotId={gift.lotId} />}
      {gift.done.length > 0 && (
        <section className="pane-part" aria-label={t('gifts.done')}>
          <h3>{t('gifts.done')}</h3>
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
  const { t, say } = useTexts()
  const { harvest, sample, grownAt, terms, limits, donorWords, story } = gift.gift
  const today = useToday()
  return (
    <section className="pane-part" aria-label={t('gifts.as-offered')}>
      <h3>{t('gifts.as-offered')}</h3>
      <FactList
        facts={[
          { name: t('gifts.fact.offered'), value: format.day(gift.offeredOn) },
          { name: t('gifts.fact.amount'), value: gift.amount },
          {
            name: t('gifts.fact.harvest'),
            value: harvest === '' ? t('gifts.fact.harvest-unknown') : harvest,
          },
          { name: t('gifts.fact.sample'), value: sample },
          { name: t('gifts.fact.grown'), value: grownAt },
          { name: t('gifts.fact.cautions'), value: cautionsInWords(gift, say) },
          { name: t('gifts.fact.terms'), value: terms },
          {
            name: t('terms.terms'),
            value: limitsTold(limits ?? NO_LIMITS, today)
              .map(say)
              .join(' '),
          },
          { name: t('gifts.fact.donor-words'), value: donorWords },
          { name: t('gifts.fact.story'), value: story },
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
  const { t, pieces } = useTexts()
  const lot = useRead('lot.get', { lotId }).data
  const [printing, setPrinting] = useState(false)
  if (lot === undefined) return null
  const out = lot.ledger.filter(({ kind, takenBack }) => kind === 'withdrawal' && !takenBack).length
  const holds = message('gifts.became-holds', {
    lot: lot.lotNumber,
    placed: lot.place === '' ? 'no' : 'yes',
    place: lot.place,
    amount: lot.quantity.words,
  })
  return (
    <section className="pane-part" aria-label={t('gifts.became')}>
      <h3>{t('gifts.became')}</h3>
      <p>
        {pieces<ReactNode>(holds, {
          link: (number) => (
            <Link key="lot" href={lotAddress(lotId)}>
              {number}
            </Link>
          ),
        })}{' '}
        {t('gifts.became-out', { times: out })}
      </p>
      {lot.quarantined && <StateMark mark="quarantine" />}
      <SeedBar {...lot.stock} large />
      <p>{lot.stock.sentence}</p>
      {printing ? (
        <LabelPrint
          title={t('gifts.label')}
          lotIds={[lotId]}
          contents=""
          onClose={() => setPrinting(false)}
        />
      ) : (
        <p>
          <button type="button" className="quiet-button" onClick={() => setPrinting(true)}>
            {t('gifts.label-print')}
          </button>
        </p>
      )}
    </section>
  )
}

type Doing = 'accept' | 'wait' | 'decline'

const DOINGS: readonly { readonly name: Doing; readonly form: FC<GiftFormProps> }[] = [
  { name: 'accept', form: AcceptForm },
  { name: 'wait', form: WaitForm },
  { name: 'decline', form: DeclineForm },
]

/** What can be done with a gift that was offered; each opens its form right here. */
function GiftDoing({ gift }: { readonly gift: WaitingGift }) {
  const { t } = useTexts()
  const { open, button, close } = useOpenForm<Doing>()
  const draftName = (name: string) => `gift/${gift.giftId}/${name}`
  const OpenForm = DOINGS.find(({ name }) => name === open)?.form
  return (
    <section className="pane-part what-to-do" aria-label={t('gifts.what-to-do')}>
      <div className="buttons">
        {DOINGS.map(({ name }) => (
          <button
            key={name}
            type="button"
            className={name === 'accept' && gift.waitsFor.length === 0 ? 'button' : 'quiet-button'}
            {...(name === 'accept' ? { 'data-next': '' } : {})}
            {...button(name)}
          >
            {open !== name && isBegun(draftName(name))
              ? t('gifts.begun', { doing: message(`gifts.${name}`) })
              : t(`gifts.${name}`)}
          </button>
        ))}
      </div>
      {OpenForm !== undefined && open !== null && (
        <OpenForm key={open} gift={gift} draftName={draftName(open)} onClose={() => close(open)} />
      )}
    </section>
  )
}
