import { useState } from 'react'
import { useRead } from '../shared/client/use-read.ts'
import { useTexts } from '../shared/format/use-texts.ts'
import { StartCollection } from './start-collection.tsx'
import './strip.css'

/** Says that the demo is not real, and starts a collection of the keeper's own in one click. */
export function DemoStrip() {
  const { t } = useTexts()
  const about = useRead('collection.get', {}).data
  const [starting, setStarting] = useState(false)
  if (about === undefined) return null
  return (
    <div className="strip-place">
      {about.kind === 'demo' && (
        <section className="strip row" aria-label={t('app.demo')}>
          <p>{t('app.this-is-demo')}</p>
          {starting ? (
            <StartCollection onClose={() => setStarting(false)} />
          ) : (
            <button type="button" className="word-button" onClick={() => setStarting(true)}>
              {t('app.start-own')}
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
