import { Link, useLocation } from 'wouter'
import {
  RAIL_GROUPS,
  type RailGroup,
  type RailWord,
  railPathOf,
  SETTINGS_WORD,
  screenOf,
} from './rail-words.ts'
import { alongRail } from './regions.ts'
import './rail.css'

/** The rail along the top: the keeper's day in words, the one field in the middle, settings at the end. */
export function Rail({ children }: { readonly children: React.ReactNode }) {
  const onKeyDown = (event: React.KeyboardEvent<HTMLElement>) => {
    const by = { ArrowRight: 1, ArrowLeft: -1 } as const
    if (!(event.key in by) || !(event.target instanceof HTMLAnchorElement)) return
    event.preventDefault()
    alongRail(event.currentTarget, by[event.key as keyof typeof by])
  }
  return (
    // biome-ignore lint/a11y/noStaticElementInteractions: arrows are a second way along the links
    <header className="rail" onKeyDown={onKeyDown}>
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
