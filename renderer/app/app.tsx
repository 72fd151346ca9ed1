import { QueryClientProvider } from '@tanstack/react-query'
import { useState } from 'react'
import { Router } from 'wouter'
import { useHashLocation } from 'wouter/use-hash-location'
import { createQueryClient } from '../shared/client/query-client.ts'
import { useAppearance } from './appearance.ts'
import { Frame } from './frame.tsx'
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
  return (
    <Frame>
      <Screens />
    </Frame>
  )
}
