import { useState } from 'react'
import type { GrowingSite } from '../../../db/contract/season-plan-operations.ts'
import { readNumber } from '../../../db/domain/amounts/read-number.ts'
import { CardForm, problemAt } from '../../shared/card-form/card-form.tsx'
import { useRead } from '../../shared/client/use-read.ts'
import { useWrite } from '../../shared/client/use-write.ts'
import { SelectField } from '../../shared/table-form/select-field.tsx'
import { TextField } from '../../shared/table-form/text-field.tsx'

interface GardenFormProps {
  /** Null: a new one. */
  readonly site: GrowingSite | null
  readonly onClose: () => void
}

const WAYS = [
  { value: 'none', label: 'not known' },
  { value: 'sketch', label: 'metres on a sketch' },
  { value: 'earth', label: 'latitude and longitude' },
] as const
type Way = (typeof WAYS)[number]['value']

/** A garden: whose, how much bed, where it lies, what flowers nearby. */
export function GardenForm({ site, onClose }: GardenFormProps) {
  const [typed, setTyped] = useState(() => typedFrom(site))
  const write = useWrite('site.save')
  const crops = useRead('crop.list', {}).data?.crops ?? []
  const growers = useRead('person.list', { role: 'grower', limit: 500 }).data?.people ?? []
  const set = (part: Partial<ReturnType<typeof typedFrom>>) => setTyped({ ...typed, ...part })
  const [area, most, first, second, metres] = [
    typed.area,
    typed.most,
    typed.first,
    typed.second,
    typed.metres,
  ].map(numberOf)
  const wantsPlace = typed.way !== 'none'
  const missing =
    area == null || area <= 0 || most == null || !Number.isInteger(most) || most < 1
      ? 'bed'
      : wantsPlace && (first == null || second == null)
        ? 'place'
        : typed.crop !== '' && (metres == null || metres < 0)
          ? 'near'
          : null
  const send = () => {
    if (missing !== null || area == null || most == null) return
    const place =
      first == null || second == null || !wantsPlace
        ? null
        : typed.way === 'earth'
          ? { latitude: first, longitude: second }
          : { eastM: first, northM: second }
    const others = (site?.neighbours ?? []).slice(1).map(({ cropId, metres }) => ({ cropId, metres }))
    const near = typed.crop === '' || metres == null ? [] : [{ cropId: typed.crop, metres }]
    write.mutate(
      {
        siteId: site?.siteId ?? null,
        name: typed.name,
        growerId: typed.grower === '' ? null : Number(typed.grower),
        areaM2: area,
        mostVarieties: most,
        takes: site?.takes ?? [],
        place,
        neighbours: [...near, ...others.filter(({ cropId }) => cropId !== typed.crop)],
        note: site?.note ?? '',
      },
      { onSuccess: onClose },
    )
  }
  const text = (field: 'area' | 'most' | 'first' | 'second' | 'metres', label: string, problem?: string) => (
    <TextField
      label={label}
      step={field}
      size="record"
      value={typed[field]}
      onChange={(value) => set({ [field]: value })}
      problem={problem}
    />
  )
  return (
    <CardForm
      title={site === null ? 'A new garden' : site.name}
      level={2}
      sendWord="Keep this garden"
      busy={write.isPending || missing !== null}
      error={write.error}
      shownAtField={['name', 'place']}
      onSend={send}
      onClose={onClose}
    >
      <TextField
        label="Its name"
        step="name"
        size="record"
        value={typed.name}
        onChange={(name) => set({ name })}
        problem={problemAt(write.error, 'name')}
      />
      <SelectField
        label="Grower"
        step="grower"
        size="record"
        value={typed.grower}
        options={[
          { value: '', label: 'nobody named' },
          ...growers.map(({ personId, name }) => ({ value: String(personId), label: name })),
        ]}
        onChange={(grower) => set({ grower })}
      />
      {text(
        'area',
        'Free bed, m²',
        missing === 'bed' ? 'Type its bed and how many varieties it takes.' : undefined,
      )}
      {text('most', 'Varieties at most')}
      <SelectField<Way>
        label="Where it lies"
        step="way"
        size="record"
        value={typed.way}
        options={WAYS}
        onChange={(way) => set({ way })}
      />
      {wantsPlace &&
        text(
          'first',
          typed.way === 'earth' ? 'Latitude' : 'Metres east',
          missing === 'place' ? 'Type both numbers.' : problemAt(write.error, 'place'),
        )}
      {wantsPlace && text('second', typed.way === 'earth' ? 'Longitude' : 'Metres north')}
      <SelectField
        label="What flowers nearby"
        step="crop"
        size="record"
        value={typed.crop}
        options={[
          { value: '', label: 'nothing known' },
          ...crops.map(({ cropId, commonName }) => ({ value: cropId, label: commonName })),
        ]}
        onChange={(crop) => set({ crop })}
      />
      {typed.crop !== '' &&
        text('metres', 'How far off, m', missing === 'near' ? 'Type a number of metres.' : undefined)}
    </CardForm>
  )
}

function typedFrom(site: GrowingSite | null) {
  const place = site?.place ?? null
  const near = site?.neighbours[0]
  const way: Way = place === null ? 'none' : 'latitude' in place ? 'earth' : 'sketch'
  const [first, second] =
    place === null
      ? ['', '']
      : 'latitude' in place
        ? [place.latitude, place.longitude]
        : [place.eastM, place.northM]
  return {
    name: site?.name ?? '',
    grower: site?.growerId == null ? '' : String(site.growerId),
    area: site === null ? '' : String(site.areaM2),
    most: site === null ? '' : String(site.mostVarieties),
    way,
    first: String(first),
    second: String(second),
    crop: near?.cropId ?? '',
    metres: near === undefined ? '' : String(near.metres),
  }
}

function numberOf(typed: string): number | null {
  const negative = typed.trim().startsWith('-')
  const read = readNumber(typed.trim().replace(/^-/, ''))
  if (read.kind !== 'number') return null
  return negative ? -read.value : read.value
}
