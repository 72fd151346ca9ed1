import { useState } from 'react'
import { milligrams } from '../../../../db/domain/amounts/mass.ts'
import { seedCount } from '../../../../db/domain/amounts/seed-count.ts'
import {
  gramsPerHundred,
  judgeReplicates,
  weightStatistics,
} from '../../../../db/domain/weights/hundred-seed-weight.ts'
import { type Message, message } from '../../../../db/messages/message.ts'
import { CardForm } from '../../../shared/card-form/card-form.tsx'
import { useCardForm } from '../../../shared/card-form/use-card-form.ts'
import { wholeNumber } from '../../../shared/card-form/whole-number.ts'
import { readTypedNumber } from '../../../shared/format/manner.ts'
import { useTexts } from '../../../shared/format/use-texts.ts'
import { TextField } from '../../../shared/table-form/fields.tsx'
import type { ActionFormProps } from './action-form-props.ts'

interface Portion {
  readonly seeds: string
  readonly grams: string
}

const EMPTY = {
  portions: [{ seeds: '', grams: '' }] as readonly Portion[],
  chaffy: false,
  note: '',
  on: '',
}

/** One counted and weighed portion, or several, that give the weight of a hundred. */
export function WeighSeedsForm({ lot, onClose, ...kept }: ActionFormProps) {
  const { t, say } = useTexts()
  const form = useCardForm({ ...kept, onClose, empty: EMPTY, writes: 'lot.record-weight' })
  const { portions: typed, chaffy, note } = form.typed
  const [warnings, setWarnings] = useState<readonly string[]>([])
  const replicates = readPortions(typed)
  return (
    <CardForm
      title={t('shelf.do-weigh', { unit: lot.unit.one })}
      sendWord={t('shelf.write-weight')}
      {...form.sending(
        replicates && { lotId: lot.lotId, on: form.dayOf('on'), replicates, chaffy, note },
        (value) => {
          setWarnings(value.warnings)
          if (value.warnings.length === 0) onClose()
        },
      )}
    >
      {warnings.length > 0 && (
        <div className="card-form-wide card-cautions" role="alert">
          <p>{t('shelf.look-once-more')}</p>
          {warnings.map((warning) => (
            <p key={warning}>{warning}</p>
          ))}
        </div>
      )}
      <Portions lot={lot} portions={typed} onChange={form.choice('portions').onChange} />
      <p className="card-form-wide" role="status">
        {replicates !== null && say(weightOf(replicates, chaffy, lot.unit.one))}
      </p>
      {form.dayField('on')}
      {form.textField('note', t('shelf.note'))}
      {form.checkField('chaffy', t('shelf.chaffy'))}
    </CardForm>
  )
}

interface PortionsProps {
  readonly lot: ActionFormProps['lot']
  readonly portions: readonly Portion[]
  readonly onChange: (portions: readonly Portion[]) => void
}

function Portions({ lot, portions, onChange }: PortionsProps) {
  const { t } = useTexts()
  const label = (name: 'seeds' | 'grams', portion: number) =>
    name === 'seeds'
      ? t('shelf.portion-seeds', { unit: lot.unit.one, portion })
      : t('shelf.portion-grams', { portion })
  const changeAt = (index: number, part: Partial<Portion>) =>
    onChange(portions.map((portion, i) => (i === index ? { ...portion, ...part } : portion)))
  return (
    <fieldset className="stack-2 boxed card-form-wide">
      <legend>{t('shelf.counted-and-weighed')}</legend>
      {portions.map((portion, index) => (
        // biome-ignore lint/suspicious/noArrayIndexKey: portions have no name but their place, and are only added at the end
        <div key={index} className="pair">
          {(['seeds', 'grams'] as const).map((name) => (
            <TextField
              key={name}
              label={label(name, portions.length === 1 ? 0 : index + 1)}
              size="record"
              value={portion[name]}
              onChange={(typed) => changeAt(index, { [name]: typed })}
            />
          ))}
        </div>
      ))}
      <button
        type="button"
        className="word-button"
        onClick={() => onChange([...portions, { seeds: portions.at(-1)?.seeds ?? '', grams: '' }])}
      >
        {t('shelf.another-portion')}
      </button>
    </fieldset>
  )
}

/** The portions as numbers, without empty lines; null while one cannot be read. */
function readPortions(portions: readonly Portion[]): { seeds: number; grams: number }[] | null {
  const filled = portions.filter(({ seeds, grams }) => seeds.trim() !== '' || grams.trim() !== '')
  const read = filled.flatMap(({ seeds, grams }) => {
    const count = wholeNumber(seeds)
    const mass = readTypedNumber(grams)
    return count !== null && count > 0 && mass !== null && mass > 0 ? [{ seeds: count, grams: mass }] : []
  })
  return read.length === filled.length && read.length > 0 ? read : null
}

function weightOf(
  portions: readonly { seeds: number; grams: number }[],
  chaffy: boolean,
  unit: string,
): Message {
  const samples = portions.map(({ seeds, grams }) => ({
    seeds: seedCount(seeds),
    mass: milligrams(Math.max(1, Math.round(grams * 1_000))),
  }))
  const statistics = weightStatistics(samples)
  const grams = gramsPerHundred(statistics.hundredSeedWeight)
  const spread = statistics.coefficientOfVariation
  if (spread === null) return message('shelf.hundred-weigh', { unit, grams })
  return message('shelf.hundred-weigh-spread', {
    unit,
    grams,
    spread: Math.round(10 * spread) / 10,
    verdict: judgeReplicates(statistics, chaffy ? 'chaffy' : 'ordinary'),
  })
}
