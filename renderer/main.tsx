import './shared/tokens.css'
import './shared/base.css'
import './shared/script-fonts.css'
import './shared/parts.css'
import './shared/panes/panes.css'
import { StrictMode } from 'react'
import { createRoot } from 'react-dom/client'
import { config } from 'zod'
import { App } from './app/app.tsx'
import { takeSecretFromAddress } from './shared/client/secret.ts'
import { staySeen } from './shared/client/stay-seen.ts'
import { keepComposedKeys } from './shared/composed-keys.ts'
import './shared/print.css'
import './shared/forced-colors.css'

// The page's policy lets no text become script, so the checker must not try to write itself some.
config({ jitless: true })

keepComposedKeys(window)
takeSecretFromAddress()
if (window.commonDrawer === undefined) void staySeen()

const root = document.getElementById('root')
if (root !== null) {
  createRoot(root).render(
    <StrictMode>
      <App />
    </StrictMode>,
  )
}
