import { QueryClientProvider } from '@tanstack/react-query'
import { useState } from 'react'
import { Router } from 'wouter'
import { useHashLocation } from 'wouter/use-hash-location'
import { NoAnswer } from '../shared/client/problem-error.ts'
import { createQueryClient } from '../shared/client/query-client.ts'
import { useOthersWrites } from '../shared/client/use-others-writes.ts'
import { useRead } from '../shared/client/use-read.ts'
import { useAppearance } from './appearance.ts'
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
  useOthersWrites()
  const about = useRead('collection.about', {})
  const noneOpen = about.error !== null && about.data === undefined && !(about.error instanceof NoAnswer)
  return <Frame>{noneOpen ? <NoCollection why={about.error} /> : <Screens />}</Frame>
}
