import { QueryClientProvider } from '@tanstack/react-query'
import { useEffect, useState } from 'react'
import { Router } from 'wouter'
import { useHashLocation } from 'wouter/use-hash-location'
import { languageOf } from '../../db/messages/languages.ts'
import { NoAnswer, type ProblemError } from '../shared/client/problem-error.ts'
import { createQueryClient } from '../shared/client/query-client.ts'
import { useOthersWrites } from '../shared/client/use-others-writes.ts'
import { useRead } from '../shared/client/use-read.ts'
import { noteTexts } from '../shared/format/texts-now.ts'
import { useTexts } from '../shared/format/use-texts.ts'
import { Frame } from './frame.tsx'
import { NoCollection } from './no-collection.tsx'
import { Screens } from './screens.tsx'

export function App() {
  const [queries] = useState(createQueryClient)
  return (
    <QueryClientProvider client={queries}>
      <Router hook={useHashLocation}>
        <Dressed />
      </Router>
    </QueryClientProvider>
  )
}

function Dressed() {
  useAppearance()
  useLanguage()
  useOthersWrites()
  const why = useWhyNoneOpen()
  return <Frame>{why === null ? <Screens /> : <NoCollection why={why} />}</Frame>
}

/**
 * Why no collection is open; null while one is, or nobody knows yet.
 *
 * Kept while it is asked again, as any part of the window may do: what stands there must not give way to empty screens,
 * which would ask once more, and so on without end.
 */
function useWhyNoneOpen(): ProblemError | null {
  const { data, error, errorUpdateCount } = useRead('collection.get', {})
  const [kept, setKept] = useState<ProblemError | null>(null)
  if (error !== null && error !== kept && !(error instanceof NoAnswer)) setKept(error)
  return data === undefined && errorUpdateCount > 0 ? kept : null
}

/** Dresses the page as the collection's settings say: light, dark or as the system. */
function useAppearance(): void {
  const settings = useRead('collection.get', {}).data?.settings
  const appearance = settings?.appearance
  useEffect(() => {
    if (appearance === undefined) return
    document.documentElement.dataset['appearance'] = appearance
  }, [appearance])
}

/** Tells the page's reader, and whoever reads it aloud, its language and from which side it is written. */
function useLanguage(): void {
  const code = useRead('collection.get', {}).data?.settings.language
  const texts = useTexts()
  useEffect(() => noteTexts(texts), [texts])
  useEffect(() => {
    if (code === undefined) return
    document.documentElement.lang = code
    document.documentElement.dir = languageOf(code).direction
  }, [code])
}
