import type { PlaceClimate } from '../../../db/contract/storage-operations.ts'
import { aimInWords } from '../../../db/domain/climate/climate-words.ts'
import { PLACE_AIMS, type PlaceAim } from '../../../db/domain/climate/limits.ts'
import { CardForm, problemAt } from '../../shared/card-form/card-form.tsx'
import { useKeptForm } from '../../shared/card-form/use-kept-form.ts'
import { wholeNumber } from '../../shared/card-form/whole-number.ts'
import { useWrite } from '../../shared/client/use-write.ts'
import { SelectField } from '../../shared/table-form/select-field.tsx'
import { TextField } from '../../shared/table-form/text-field.tsx'
import { typedNumber } from './typed-number.ts'

interface TermsFormProps {
  readonly climate: PlaceClimate
  readonly onClose: () => void
}

const AIMS = PLACE_AIMS.map((aim) => ({ value: aim, label: aimInWords(aim) }))

/** What a place is meant for, and the keeper's own limits where they differ from the usual ones. */
export function TermsForm({ climate, onClose }: TermsFormProps) {
  const { place, terms, suggestedAim } = climate
  const { typed, change, letGo } = useKeptForm(`terms/${place.placeId}`, {
    aim: (terms?.aim ?? suggestedAim) as PlaceAim,
    celsius: terms?.highestCelsius == null ? '' : String(terms.highestCelsius),
    humidity: terms?.highestHumidity == null ? '' : String(terms.highestHumidity),
    roundDays: terms?.roundDays == null ? '' : String(terms.roundDays),
  })
  const write = useWrite('place.set-terms')
  const [celsius, humidity] = [typedNumber(typed.celsius), typedNumber(typed.humidity)]
  const roundDays = wholeNumber(typed.roundDays)
  const unread =
    (typed.roundDays.trim() !== '' && roundDays === null) ||
    (typed.celsius.trim() !== '' && celsius === null) ||
    (typed.humidity.trim() !== '' && humidity === null)
  return (
    <CardForm
      title="What it is meant for"
      sendWord="Keep that"
      busy={write.isPending || unread}
      error={write.error}
      shownAtField={['highestCelsius', 'highestHumidity', 'roundDays']}
      onSend={() =>
        write.mutate(
          {
            placeId: place.placeId,
            aim: typed.aim,
            highestCelsius: celsius,
            highestHumidity: humidity,
            roundDays,
          },
          {
            onSuccess: () => {
              letGo()
              onClose()
            },
          },
        )
      }
      onClose={onClose}
    >
      <SelectField
        label="Meant for keeping seed"
        size="record"
        value={typed.aim}
        options={AIMS}
        onChange={(aim) => change({ aim })}
      />
      <TextField
        label="At most, °C"
        step="celsius"
        size="record"
        hint="empty: the usual"
        value={typed.celsius}
        onChange={(value) => change({ celsius: value })}
        problem={problemAt(write.error, 'highestCelsius')}
      />
      <TextField
        label="Humidity at most, %"
        step="humidity"
        size="record"
        hint="empty: the usual"
        value={typed.humidity}
        onChange={(value) => change({ humidity: value })}
        problem={problemAt(write.error, 'highestHumidity')}
      />
      <TextField
        label="A round every … days"
        step="round-days"
        size="record"
        hint="empty: no rounds here"
        value={typed.roundDays}
        onChange={(value) => change({ roundDays: value })}
        problem={problemAt(write.error, 'roundDays')}
      />
    </CardForm>
  )
}
