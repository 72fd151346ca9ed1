import { type ReactNode, useState } from 'react'
import { message } from '../../../db/messages/message.ts'
import { useTexts } from '../../shared/format/use-texts.ts'
import { CROPS } from '../../shared/table-form/crop-source.ts'
import { SuggestField } from '../../shared/table-form/suggest-field.tsx'
import { ALOUD } from './aloud.tsx'

interface Picked {
  readonly cropId: string
  readonly crop: string
}

interface CropsPickedProps {
  readonly label: string
  /** What no crop at all means. */
  readonly none: string
  readonly picked: readonly Picked[]
  readonly onAdd: (cropId: string) => void
  readonly onTakeOut: (cropId: string) => void
  /** Stands in place of the name: a field that names the crop in its label. */
  readonly beside?: (crop: Picked) => ReactNode
}

/** Crops picked by a few letters, one after another; each can be taken out again. */
export function CropsPicked({ label, none, picked, onAdd, onTakeOut, beside }: CropsPickedProps) {
  const { t, pieces } = useTexts()
  const [text, setText] = useState('')
  return (
    <div className="crops-picked card-form-wide">
      <SuggestField
        label={label}
        text={text}
        chosen={false}
        onText={setText}
        source={CROPS}
        onPick={({ cropId }) => {
          setText('')
          if (!picked.some((one) => one.cropId === cropId)) onAdd(cropId)
        }}
        nothingFound={() => t('season.pick-crop')}
        placeholder={t('season.one-more-crop')}
        words={picked.length === 0 ? <p>{none}</p> : ''}
      />
      {picked.length > 0 && (
        <ul>
          {picked.map((one) => (
            <li key={one.cropId}>
              {beside?.(one) ?? <span>{one.crop}</span>}
              <button type="button" className="word-button" onClick={() => onTakeOut(one.cropId)}>
                {pieces(message('season.take-out-crop', { crop: one.crop }), ALOUD)}
              </button>
            </li>
          ))}
        </ul>
      )}
    </div>
  )
}
