import type { PlaceClimate } from '../../../db/contract/storage-operations.ts'
import { aimInWords } from '../../../db/domain/climate/climate-words.ts'
import { PLACE_AIMS, type PlaceAim } from '../../../db/domain/climate/limits.ts'
import { CardForm } from '../../shared/card-form/card-form.tsx'
import { useCardForm } from '../../shared/card-form/use-card-form.ts'
import { wholeNumber } from '../../shared/card-form/whole-number.ts'
import { SelectField, TextField } from '../../shared/table-form/fields.tsx'
import { typedNumber } from './typed-number.ts'

interface TermsFormProps {
  readonly climate: PlaceClimate
  readonly onClose: () => void
}

const AIMS = PLACE_AIMS.map((aim) => ({ value: aim, label: aimInWords(aim) }))

/** What a place is meant for, and the keeper's own limits where they differ from the usual ones. */
export function TermsForm({ climate, onClose }: TermsFormProps) {
  const { place, terms, suggestedAim } = climate
  const form = useCardForm({
    draftName: `terms/${place.placeId}`,
    empty: {
      aim: (terms?.aim ?? suggestedAim) as PlaceAim,
      celsius: terms?.highestCelsius == null ? '' : String(terms.highestCelsius),
      humidity: terms?.highestHumidity == null ? '' : String(terms.highestHumidity),
      roundDays: terms?.roundDays == null ? '' : String(terms.roundDays),
    },
    writes: 'place.change-terms',
    onClose,
  })
  const { typed } = form
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
      {...form.frame}
      busy={form.frame.busy || unread}
      onSend={() =>
        form.send({
          placeId: place.placeId,
          aim: typed.aim,
          highestCelsius: celsius,
          highestHumidity: humidity,
          roundDays,
        })
      }
    >
      <div className="card-form-wide">
        <SelectField label="Meant for keeping seed" size="record" options={AIMS} {...form.choice('aim')} />
      </div>
      <TextField
        label="At most, °C"
        size="record"
        hint="empty: the usual"
        {...form.field('celsius', 'highestCelsius')}
      />
      <TextField
        label="Humidity at most, %"
        size="record"
        hint="empty: the usual"
        {...form.field('humidity', 'highestHumidity')}
      />
      <TextField
        label="A round every … days"
        size="record"
        hint="empty: no rounds here"
        {...form.field('roundDays')}
      />
    </CardForm>
  )
}
