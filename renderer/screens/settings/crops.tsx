import { useState } from 'react'
import { useRead } from '../../shared/client/use-read.ts'
import { useWrite } from '../../shared/client/use-write.ts'
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
  const [sought, setSought] = useState<Sought>(NONE)
  const create = useWrite('crop.create')
  const own = (useRead('crop.list', {}).data?.crops ?? []).filter((crop) => crop.own)
  const add = (name: string) =>
    create.mutate({ name }, { onSuccess: ({ cropId }) => setSought({ text: name, cropId }) })
  return (
    <section className="page-part stack-2" aria-label="Crops">
      <h2>Crops</h2>
      <p>
        Find a crop to set what it has to keep, or add one that the table has not. What is not known of it
        stays unknown, and nothing is borrowed from another.
      </p>
      <SuggestField
        label="Crop"
        text={sought.text}
        chosen={sought.cropId !== null}
        onText={(text) => setSought({ text, cropId: null })}
        source={CROPS}
        onPick={({ commonName, cropId }) => setSought({ text: commonName, cropId })}
        addNew={{
          label: (text) => `Add ${text} as a crop of your own`,
          onAdd: add,
          seldom: true,
        }}
        nothingFound={noCropFound}
        placeholder="bean, tomato, Lactuca …"
      />
      {create.error !== null && <ProblemText problem={create.error.problem} />}
      {own.length > 0 && (
        <p className="buttons">
          <span className="soft">Your own:</span>
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
