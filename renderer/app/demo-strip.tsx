import { useState } from 'react'
import { useRead } from '../shared/client/use-read.ts'
import { StartCollection } from './start-collection.tsx'
import './strip.css'

/** Says that the demo is not real, and starts a collection of the keeper's own in one click. */
export function DemoStrip() {
  const about = useRead('collection.get', {}).data
  const [starting, setStarting] = useState(false)
  if (about === undefined) return null
  return (
    <div className="strip-place">
      {about.kind === 'demo' && (
        <section className="strip row" aria-label="Demo collection">
          <p>This is the demo collection. Nothing here is real.</p>
          {starting ? (
            <StartCollection onClose={() => setStarting(false)} />
          ) : (
            <button type="button" className="word-button" onClick={() => setStarting(true)}>
              Start my own collection
            </button>
          )}
        </section>
      )}
      {about.warnings.map((warning) => (
        <p key={warning} className="strip row strip-warning">
          {warning}
        </p>
      ))}
    </div>
  )
}
