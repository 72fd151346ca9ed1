import { Link } from 'wouter'
import { useRead } from '../../shared/client/use-read.ts'
import { useTexts } from '../../shared/format/use-texts.ts'
import { PaneRows } from '../../shared/panes/pane-rows.tsx'
import { useListAndCard } from '../../shared/panes/use-list-and-card.ts'
import { ProblemText } from '../../shared/parts/problem-text.tsx'
import { GrowOutCard } from './grow-out-card.tsx'
import { seasonNotesAddress } from './grow-out-words.ts'

/** What grows where on the left; on the right what was noted of one, what to note next, and its seed brought back. */
export function SeasonNotesScreen({ growOutId }: { readonly growOutId?: number }) {
  const { t } = useTexts()
  const read = useRead('grow-out.list', {})
  const first = read.data?.growOuts[0]
  const { card, openCard } = useListAndCard(
    growOutId !== undefined,
    first && seasonNotesAddress(first.growOutId),
  )
  if (read.error !== null) return <ProblemText problem={read.error.problem} />
  if (read.data === undefined) return <p className="soft waiting">{t('season.opening')}</p>
  const { growOuts } = read.data
  const shown = growOuts.find((one) => one.growOutId === growOutId)
  return (
    <div className="panes">
      <section className="panes-list" aria-label={t('season.what-grows')}>
        <header className="head-row">
          <h1>{t('season.notes')}</h1>
          <Link href="/regrow/plan">{t('season.plan')}</Link>
        </header>
        {growOuts.length === 0 && <p className="soft">{t('season.nothing-grows')}</p>}
        <PaneRows
          label={t('season.grow-outs')}
          rows={growOuts.map((one) => ({
            address: seasonNotesAddress(one.growOutId),
            content: (
              <>
                <span className="strong">{one.variety}</span>
                <span className="soft">
                  {one.site} · {one.season} · {one.notes.at(-1)?.words ?? t(`season.stands.${one.state}`)}
                </span>
              </>
            ),
          }))}
          onOpen={openCard}
        />
      </section>
      <section className="panes-card" aria-label={t('season.grow-out')} ref={card}>
        {shown !== undefined && <GrowOutCard key={shown.growOutId} growOut={shown} />}
        {growOutId !== undefined && shown === undefined && <p>{t('season.no-such')}</p>}
      </section>
    </div>
  )
}
