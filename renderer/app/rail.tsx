import { Link, useLocation } from 'wouter'
import { focusAlong, LEFT_AND_RIGHT } from '../shared/focus/focus-along.ts'
import {
  RAIL_GROUPS,
  type RailGroup,
  type RailWord,
  railPathOf,
  SETTINGS_WORD,
  screenOf,
} from './rail-words.ts'
import './rail.css'

/** The rail along the top: the keeper's day in words, the one field in the middle, settings at the end. */
export function Rail({ children }: { readonly children: React.ReactNode }) {
  return (
    // biome-ignore lint/a11y/noStaticElementInteractions: arrows are a second way along the links
    <header className="rail" onKeyDown={(event) => focusAlong(event, LEFT_AND_RIGHT, '.rail-word')}>
      <nav className="rail-words" aria-label="The day">
        <RailGroups side="before" />
      </nav>
      <div className="rail-find">{children}</div>
      <nav className="rail-words rail-end" aria-label="The season and the collection">
        <RailGroups side="after" />
        <RailLink {...SETTINGS_WORD} />
      </nav>
    </header>
  )
}

function RailGroups({ side }: Pick<RailGroup, 'side'>) {
  return RAIL_GROUPS.filter((group) => group.side === side).map((group) => (
    <section key={group.name} className="rail-group" aria-label={group.name}>
      <span className="rail-group-name" aria-hidden="true">
        {group.name}
      </span>
      {group.words.map((word) => (
        <RailLink key={word.path} {...word} />
      ))}
    </section>
  ))
}

function RailLink({ path, word }: RailWord) {
  const [location] = useLocation()
  const here = railPathOf(screenOf(location)) === path
  return (
    <Link href={path} className="rail-word" {...(here ? { 'aria-current': 'page' as const } : {})}>
      {word}
    </Link>
  )
}
