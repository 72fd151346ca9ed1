import { Link, useLocation } from 'wouter'
import { focusAlong, keysAlongLine } from '../shared/focus/focus-along.ts'
import { useTexts } from '../shared/format/use-texts.ts'
import './rail.css'
import { RAIL, SCREENS, screenOf } from './screen-list.ts'

/** The rail along the top: the keeper's day in words, the one field in the middle, settings at the end. */
export function Rail({ children }: { readonly children: React.ReactNode }) {
  const { t } = useTexts()
  return (
    // biome-ignore lint/a11y/noStaticElementInteractions: arrows are a second way along the links
    <header className="rail" onKeyDown={(event) => focusAlong(event, keysAlongLine(), '.rail-word')}>
      <nav className="rail-words" aria-label={t('rail.day')}>
        <RailGroups side="before" />
      </nav>
      <div className="rail-find">{children}</div>
      <nav className="rail-words rail-end" aria-label={t('rail.rest')}>
        <RailGroups side="after" />
        <RailLinks group="end" />
      </nav>
    </header>
  )
}

function RailGroups({ side }: { readonly side: 'before' | 'after' }) {
  const { t } = useTexts()
  const groups = Object.keys(RAIL) as (keyof typeof RAIL)[]
  return groups
    .filter((group) => RAIL[group] === side)
    .map((group) => (
      <section key={group} className="rail-group" aria-label={t(`rail.${group}`)}>
        <span className="rail-group-name" aria-hidden="true">
          {t(`rail.${group}`)}
        </span>
        <div className="rail-group-words">
          <RailLinks group={group} />
        </div>
      </section>
    ))
}

function RailLinks({ group }: { readonly group: string }) {
  const { say } = useTexts()
  const [location] = useLocation()
  const here = screenOf(location)
  return SCREENS.filter(({ rail }) => rail === group).map(({ path, word }) => (
    <Link
      key={path}
      href={path}
      className="rail-word"
      {...(path === (here?.under ?? here?.path) ? { 'aria-current': 'page' as const } : {})}
    >
      {say(word)}
    </Link>
  ))
}
