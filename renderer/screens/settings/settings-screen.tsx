import { useRead } from '../../shared/client/use-read.ts'
import { ProblemText } from '../../shared/parts/problem-text.tsx'
import { AppearanceChoice } from './appearance-choice.tsx'
import { Backups } from './backups.tsx'
import { Care } from './care.tsx'
import { Crops } from './crops.tsx'
import { OwnSheets } from './own-sheets.tsx'
import './settings.css'
import { SettingsForm } from './settings-form.tsx'

/** The library's own ways, and the care of its book. */
export function SettingsScreen() {
  const about = useRead('collection.get', {})
  if (about.data === undefined) {
    return about.error === null ? null : <ProblemText problem={about.error.problem} />
  }
  return (
    <div className="page settings">
      <div className="stack-5">
        <h1>Settings</h1>
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
