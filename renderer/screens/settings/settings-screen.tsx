import { useState } from 'react'
import type { Settings } from '../../../db/contract/collection-operations.ts'
import { APPEARANCES } from '../../../db/domain/shared/closed-sets.ts'
import { useRead } from '../../shared/client/use-read.ts'
import { useWrite } from '../../shared/client/use-write.ts'
import { useTexts } from '../../shared/format/use-texts.ts'
import { ProblemText } from '../../shared/parts/problem-text.tsx'
import { Backups } from './backups.tsx'
import { Care } from './care.tsx'
import { Crops } from './crops.tsx'
import { OwnSheets } from './own-sheets.tsx'
import { SettingsForm } from './settings-form.tsx'
import './settings.css'

/** The library's own ways, and the care of its book. */
export function SettingsScreen() {
  const { t } = useTexts()
  const about = useRead('collection.get', {})
  if (about.data === undefined) {
    return about.error === null ? null : <ProblemText problem={about.error.problem} />
  }
  return (
    <div className="page settings">
      <div className="stack-5">
        <h1>{t('screen.settings')}</h1>
        <SettingsForm key={about.data.file} about={about.data} />
        <Crops />
        <AppearanceChoice appearance={about.data.settings.appearance} />
        <OwnSheets paper={about.data.settings.paper} />
        <Care about={about.data} />
        <Backups />
      </div>
    </div>
  )
}

/** Light or dark; chosen at once. */
function AppearanceChoice({ appearance }: { readonly appearance: Settings['appearance'] }) {
  const { t } = useTexts()
  const write = useWrite('settings.change')
  const [chosen, setChosen] = useState(appearance)
  const choose = (next: Settings['appearance']) => {
    setChosen(next)
    write.mutate({ settings: { appearance: next } }, { onError: () => setChosen(appearance) })
  }
  return (
    <section className="page-part stack-2">
      <fieldset className="settings-appearance">
        <legend>{t('settings.light-or-dark')}</legend>
        {APPEARANCES.map((value) => (
          <label key={value} className="tick">
            <input type="radio" name="appearance" checked={chosen === value} onChange={() => choose(value)} />
            {t(`settings.appearance-${value}`)}
          </label>
        ))}
        {write.error !== null && <ProblemText problem={write.error.problem} />}
      </fieldset>
    </section>
  )
}
