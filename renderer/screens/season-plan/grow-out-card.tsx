import { type ReactNode, useState } from 'react'
import { Link } from 'wouter'
import type { GrowOutLine } from '../../../db/contract/regeneration-operations.ts'
import { message } from '../../../db/messages/message.ts'
import { lotAddress } from '../../shared/addresses.ts'
import { useWrite } from '../../shared/client/use-write.ts'
import { useFormat } from '../../shared/format/use-format.ts'
import { useTexts } from '../../shared/format/use-texts.ts'
import { Card } from '../../shared/panes/card.tsx'
import { ActionButton } from '../../shared/parts/action-button.tsx'
import { ProblemText } from '../../shared/parts/problem-text.tsx'
import { ALOUD } from './aloud.tsx'
import { HarvestForm, NoteForm } from './grow-out-forms.tsx'

interface GrowOutCardProps {
  readonly growOut: GrowOutLine
}

/** One grow-out: what went out for it, what was noted, what can be noted next, and its seed brought back. */
export function GrowOutCard({ growOut }: GrowOutCardProps) {
  const { t, pieces } = useTexts()
  const format = useFormat()
  const takeBack = useWrite('entry.undo')
  const [open, setOpen] = useState<GrowOutLine['next'][number] | 'harvest' | null>(null)
  const close = () => setOpen(null)
  const { biennial, out, notes, next, back, state } = growOut
  return (
    <Card className="card" name={growOut.variety}>
      <header className="card-head">
        <h2 tabIndex={-1}>{growOut.variety}</h2>
        <p>
          {growOut.crop} · {growOut.accessionNumber} · {growOut.site}
          {growOut.grower === '' ? '' : `, ${growOut.grower}`} ·{' '}
          {t('season.of-season', { year: String(growOut.season) })}
        </p>
        <p>
          <strong>{t(`season.stands.${state}`)}</strong>
          {biennial && ` · ${t('season.harvested-in', { year: String(growOut.harvestSeason) })}`}
        </p>
      </header>
      <section className="pane-part" aria-label={t('season.what-was-noted')}>
        <h3>{t('season.what-was-noted')}</h3>
        <ul className="stack-1">
          {out.map((lot) => (
            <li key={`${lot.lotId} ${lot.on}`}>
              {pieces(
                message('season.went-out', { seeds: lot.words, lot: lot.lotNumber, on: { day: lot.on } }),
                linkTo(lot.lotId),
              )}
            </li>
          ))}
          {notes.map((note) => (
            <li key={note.entryId}>
              {t(`season.do.${note.kind}`)} {format.day(note.on)}
              {note.plants === null ? '' : ` · ${t('season.counted', { plants: note.plants })}`}
              {note.note === '' ? '' : ` · ${note.note}`}{' '}
              <ActionButton
                className="word-button"
                off={takeBack.isPending}
                onClick={() => takeBack.mutate({ entryId: note.entryId }, { onSuccess: close })}
              >
                {pieces(message('season.undo-note', { note: t(`season.do.${note.kind}`) }), ALOUD)}
              </ActionButton>
            </li>
          ))}
          {back.map((lot) => (
            <li key={lot.lotId}>
              {pieces(
                message('season.came-back', { lot: lot.lotNumber, on: { day: lot.on } }),
                linkTo(lot.lotId),
              )}
            </li>
          ))}
        </ul>
        {out.length + notes.length + back.length === 0 && <p className="soft">{t('season.nothing-yet')}</p>}
        {takeBack.error !== null && <ProblemText problem={takeBack.error.problem} />}
      </section>
      {(next.length > 0 || state === 'growing') && (
        <section className="pane-part" aria-label={t('season.what-to-note')}>
          <h3>{t('season.what-to-note')}</h3>
          <p className="buttons">
            {[...next, 'harvest' as const].map((name) => (
              <button
                key={name}
                type="button"
                className="quiet-button"
                aria-expanded={open === name}
                onClick={() => setOpen(name)}
              >
                {name === 'harvest' ? t('season.take-seed-back') : t(`season.do.${name}`)}
              </button>
            ))}
          </p>
          {open === 'harvest' && <HarvestForm growOut={growOut} onClose={close} />}
          {open !== null && open !== 'harvest' && (
            <NoteForm key={open} growOut={growOut} kind={open} onClose={close} />
          )}
        </section>
      )}
    </Card>
  )
}

/** A tag of a message that leads to a lot. */
function linkTo(lotId: number) {
  return {
    link: (words: ReactNode) => (
      <Link key={lotId} href={lotAddress(lotId)}>
        {words}
      </Link>
    ),
  }
}
