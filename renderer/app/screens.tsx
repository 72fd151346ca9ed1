import { Suspense, useEffect } from 'react'
import { type DefaultParams, matchRoute, Redirect, useLocation, useRouter } from 'wouter'
import { useTexts } from '../shared/format/use-texts.ts'
import { Arrived } from './arrived.tsx'
import { fetchAhead } from './fetched-ahead.tsx'
import { readCarried, screenOf } from './screen-list.ts'

/** After so long the first screen stands, and the code of the others may be fetched, milliseconds. */
const FETCH_AFTER_MS = 500

/** The screen that the address names. Its code is fetched when it is first opened, or soon after the start. */
export function Screens() {
  const { t, say } = useTexts()
  const [location] = useLocation()
  const { parser } = useRouter()
  useEffect(() => {
    const soon = setTimeout(() => void fetchAhead(), FETCH_AFTER_MS)
    return () => clearTimeout(soon)
  }, [])
  const screen = screenOf(location)
  const carried = (screen?.addresses ?? ['']).flatMap((address) => {
    const [fits, parts] = matchRoute<DefaultParams>(parser, `${screen?.path}${address}`, location)
    return fits ? [parts] : []
  })[0]
  if (screen === undefined || carried === undefined) return <Redirect to="/shelf" replace />
  const { path, word, component: Screen } = screen
  return (
    <Suspense key={path} fallback={<p className="soft waiting">{t('app.opening')}</p>}>
      <Screen {...readCarried(carried)} />
      <Arrived title={say(word)} />
    </Suspense>
  )
}
