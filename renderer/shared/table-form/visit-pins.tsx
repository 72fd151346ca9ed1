import { useRead } from '../client/use-read.ts'
import { useTexts } from '../format/use-texts.ts'
import { DateField, SelectField } from './fields.tsx'

/** What holds for a whole visit: the place where its seed goes, and the day; '' for today. */
interface Pinned {
  readonly placeId: number | null
  readonly receivedOn: string
}

interface VisitPinsProps {
  readonly pinned: Pinned
  readonly dayLabel: string
  readonly today: string
  readonly onChange: (change: Partial<Pinned>) => void
}

/** Where the seed of a visit goes, and the day it came. The place stays for the next person. */
export function VisitPins({ pinned, dayLabel, today, onChange }: VisitPinsProps) {
  const { placeId, receivedOn } = pinned
  const { t } = useTexts()
  const places = useRead('place.list', {}).data?.places ?? []
  return (
    <div className="visit-pins fields" data-steps-apart="">
      <SelectField
        label={t('table.place')}
        step="place"
        size="record"
        value={placeId === null ? '' : String(placeId)}
        options={[
          { value: '', label: t('table.place-later') },
          ...places.map((place) => ({ value: String(place.placeId), label: place.path })),
        ]}
        onChange={(value) => onChange({ placeId: value === '' ? null : Number(value) })}
      />
      <DateField
        label={dayLabel}
        step="received"
        size="record"
        value={receivedOn}
        today={today}
        onChange={(day) => onChange({ receivedOn: day })}
      />
    </div>
  )
}
