import { useState } from 'react'
import { useRead } from '../../shared/client/use-read.ts'
import { useWrite } from '../../shared/client/use-write.ts'
import { useTexts } from '../../shared/format/use-texts.ts'
import { ProblemText } from '../../shared/parts/problem-text.tsx'
import { CROPS, noCropFound } from '../../shared/table-form/crop-source.ts'
import { SuggestField } from '../../shared/table-form/suggest-field.tsx'
import { CropCard } from './crop-card.tsx'

interface Sought {
  readonly text: string
  readonly cropId: string | null
}

const NONE: Sought = { text: '', cropId: null }

/** Crops of the keeper's own, and what any crop has to keep. */
export function Crops() {
  const { t } = useTexts()
  const [sought, setSought] = useState<Sought>(NONE)
  const create = useWrite('crop.create')
  const own = (useRead('crop.list', {}).data?.crops ?? []).filter((crop) => crop.own)
  const add = (name: string) =>
    create.mutate({ name }, { onSuccess: ({ cropId }) => setSought({ text: name, cropId }) })
  return (
    <section className="page-part stack-2" aria-label={t('settings.crops')}>
      <h2>{t('settings.crops')}</h2>
      <p>{t('settings.crops-hint')}</p>
      <SuggestField
        label={t('settings.crop')}
        text={sought.text}
        chosen={sought.cropId !== null}
        onText={(text) => setSought({ text, cropId: null })}
        source={CROPS}
        onPick={({ commonName, cropId }) => setSought({ text: commonName, cropId })}
        addNew={{
          label: (text) => t('settings.add-crop', { crop: text }),
          onAdd: add,
          seldom: true,
        }}
        nothingFound={noCropFound}
        placeholder={t('settings.crop-hint')}
      />
      {create.error !== null && <ProblemText problem={create.error.problem} />}
      {own.length > 0 && (
        <p className="buttons">
          <span className="soft">{t('settings.your-own')}</span>
          {own.map(({ cropId, commonName }) => (
            <button
              key={cropId}
              type="button"
              className="word-button"
              aria-pressed={cropId === sought.cropId}
              onClick={() => setSought({ text: commonName, cropId })}
            >
              {commonName}
            </button>
          ))}
        </p>
      )}
      {sought.cropId !== null && (
        <CropCard key={sought.cropId} cropId={sought.cropId} onClose={() => setSought(NONE)} />
      )}
    </section>
  )
}
