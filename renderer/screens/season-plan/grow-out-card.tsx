import { useState } from 'react'
import { Link } from 'wouter'
import type { GrowOutLine } from '../../../db/contract/regeneration-operations.ts'
import { lotAddress } from '../../shared/addresses.ts'
import { useWrite } from '../../shared/client/use-write.ts'
import { useFormat } from '../../shared/format/use-format.ts'
import { Card } from '../../shared/panes/card.tsx'
import { ActionButton } from '../../shared/parts/action-button.tsx'
import { ProblemText } from '../../shared/parts/problem-text.tsx'
import { HarvestForm, NoteForm } from './grow-out-forms.tsx'
import { GROW_OUT_WORDS, NOTE_WORDS } from './grow-out-words.ts'

interface GrowOutCardProps {
  readonly growOut: GrowOutLine
}

/** One grow-out: what went out for it, what was noted, what can be noted next, and its seed brought back. */
export function GrowOutCard({ growOut }: GrowOutCardProps) {
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
          {growOut.grower === '' ? '' : `, ${growOut.grower}`} · season {growOut.season}
        </p>
        <p>
          <strong>{GROW_OUT_WORDS[state]}</strong>
          {biennial && ` · two seasons: seed is harvested in ${growOut.harvestSeason}`}
        </p>
      </header>
      <section className="pane-part" aria-label="What was noted">
        <h3>What was noted</h3>
        <ul className="stack-1">
          {out.map((lot) => (
            <li key={`${lot.lotId} ${lot.on}`}>
              {lot.words} of <Link href={lotAddress(lot.lotId)}>{lot.lotNumber}</Link> went out{' '}
              {format.day(lot.on)}
            </li>
          ))}
          {notes.map((note) => (
            <li key={note.entryId}>
              {NOTE_WORDS[note.kind]} {format.day(note.on)}
              {note.plants === null ? '' : ` · ${format.number(note.plants)} counted`}
              {note.note === '' ? '' : ` · ${note.note}`}{' '}
              <ActionButton
                className="word-button"
                off={takeBack.isPending}
                onClick={() => takeBack.mutate({ entryId: note.entryId }, { onSuccess: close })}
              >
                take back<span className="only-aloud">: {NOTE_WORDS[note.kind]}</span>
              </ActionButton>
            </li>
          ))}
          {back.map((lot) => (
            <li key={lot.lotId}>
              <Link href={lotAddress(lot.lotId)}>{lot.lotNumber}</Link> came back {format.day(lot.on)}
            </li>
          ))}
        </ul>
        {out.length + notes.length + back.length === 0 && <p className="soft">Nothing yet.</p>}
        {takeBack.error !== null && <ProblemText problem={takeBack.error.problem} />}
      </section>
      {(next.length > 0 || state === 'growing') && (
        <section className="pane-part" aria-label="What to note">
          <h3>What to note</h3>
          <p className="buttons">
            {[...next, 'harvest' as const].map((name) => (
              <button
                key={name}
                type="button"
                className="quiet-button"
                aria-expanded={open === name}
                onClick={() => setOpen(name)}
              >
                {name === 'harvest' ? 'Take its seed back' : NOTE_WORDS[name]}
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
