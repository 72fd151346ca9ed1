import type { GrowingSite } from '../../../db/contract/regeneration-operations.ts'
import { readNumber } from '../../../db/domain/amounts/read-number.ts'
import { CardForm } from '../../shared/card-form/card-form.tsx'
import { useCardForm } from '../../shared/card-form/use-card-form.ts'
import { wholeNumber } from '../../shared/card-form/whole-number.ts'
import { useRead } from '../../shared/client/use-read.ts'
import { TextField } from '../../shared/table-form/fields.tsx'
import { CropsPicked } from './crops-picked.tsx'

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

/** A garden: whose, how much bed, how long its season, where it lies, which crops it takes, what flowers nearby. */
export function GardenForm({ site, onClose }: GardenFormProps) {
  const form = useCardForm({
    draftName: `garden/${site?.siteId ?? 'new'}`,
    empty: typedFrom(site),
    writes: 'site.change',
    onClose,
  })
  const { typed, change } = form
  const crops = useRead('crop.list', {}).data?.crops ?? []
  const growers = useRead('person.list', { role: 'grower', limit: 500 }).data?.people ?? []
  const nameOf = (id: string) => crops.find(({ cropId }) => cropId === id)?.commonName ?? id
  const [area, first, second] = [typed.area, typed.first, typed.second].map(numberOf)
  const most = wholeNumber(typed.most)
  const seasonDays = typed.season.trim() === '' ? null : wholeNumber(typed.season)
  const near = typed.near.map(({ cropId, metres }) => ({ cropId, metres: numberOf(metres) }))
  const wantsPlace = typed.way !== 'none'
  const missing =
    area == null || area <= 0 || most === null || most < 1
      ? 'bed'
      : typed.season.trim() !== '' && (seasonDays === null || seasonDays < 1 || seasonDays > 366)
        ? 'season'
        : wantsPlace && (first == null || second == null)
          ? 'place'
          : near.some(({ metres }) => metres === null || metres < 0)
            ? 'near'
            : null
  const read = () => {
    if (missing !== null || area == null || most === null) return null
    const place =
      first == null || second == null || !wantsPlace
        ? null
        : typed.way === 'earth'
          ? { latitude: first, longitude: second }
          : { eastM: first, northM: second }
    return {
      siteId: site?.siteId ?? null,
      name: typed.name,
      growerId: typed.grower === '' ? null : Number(typed.grower),
      areaM2: area,
      mostVarieties: most,
      seasonDays,
      takes: [...typed.takes],
      place,
      neighbours: near.flatMap(({ cropId, metres }) => (metres === null ? [] : [{ cropId, metres }])),
      note: typed.note,
    }
  }
  const [along, across] = typed.way === 'earth' ? ['Latitude', 'Longitude'] : ['Metres east', 'Metres north']
  const unless = (isRead: boolean, problem: string) => (isRead ? undefined : problem)
  return (
    <CardForm
      title={site === null ? 'A new garden' : site.name}
      level={2}
      sendWord="Keep this garden"
      {...form.sending(read())}
    >
      {form.textField('name', 'Its name')}
      {form.selectField('grower', 'Grower', [
        { value: '', label: 'nobody named' },
        ...growers.map(({ personId, name }) => ({ value: String(personId), label: name })),
      ])}
      {form.textField('area', 'Free bed, m²', {
        problem: unless(missing !== 'bed', 'Type its bed and how many varieties it takes.'),
      })}
      {form.textField('most', 'Varieties at most')}
      {form.textField('season', 'Days without frost', {
        hint: 'in a usual year; may stay empty',
        problem: unless(missing !== 'season', 'Type 1 to 366 days, or leave it empty.'),
      })}
      {form.selectField('way', 'Where it lies', WAYS)}
      {wantsPlace && (
        <>
          {form.textField('first', along, {
            path: 'place',
            problem: unless(missing !== 'place', 'Type both numbers.'),
          })}
          {form.textField('second', across)}
        </>
      )}
      <CropsPicked
        label="Crops that the grower takes"
        none="any crop"
        picked={typed.takes.map((cropId) => ({ cropId, crop: nameOf(cropId) }))}
        onAdd={(cropId) => change({ takes: [...typed.takes, cropId] })}
        onTakeOut={(cropId) => change({ takes: typed.takes.filter((other) => other !== cropId) })}
      />
      <CropsPicked
        label="What flowers nearby"
        none="nothing known"
        picked={typed.near.map(({ cropId }) => ({ cropId, crop: nameOf(cropId) }))}
        onAdd={(cropId) => change({ near: [...typed.near, { cropId, metres: '' }] })}
        onTakeOut={(cropId) => change({ near: typed.near.filter((other) => other.cropId !== cropId) })}
        beside={({ cropId, crop }) => (
          <TextField
            label={`${crop} is how far off, m`}
            value={typed.near.find((one) => one.cropId === cropId)?.metres ?? ''}
            onChange={(metres) =>
              change({ near: typed.near.map((one) => (one.cropId === cropId ? { cropId, metres } : one)) })
            }
            problem={
              missing === 'near' && (near.find((one) => one.cropId === cropId)?.metres ?? -1) < 0
                ? 'Type a number of metres.'
                : undefined
            }
          />
        )}
      />
      {form.textField('note', 'Note', { long: true })}
    </CardForm>
  )
}

function typedFrom(site: GrowingSite | null) {
  const place = site?.place ?? null
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
    season: site?.seasonDays == null ? '' : String(site.seasonDays),
    way,
    first: String(first),
    second: String(second),
    takes: (site?.takes ?? []) as readonly string[],
    near: (site?.neighbours ?? []).map(({ cropId, metres }) => ({ cropId, metres: String(metres) })),
    note: site?.note ?? '',
  }
}

function numberOf(typed: string): number | null {
  const negative = typed.trim().startsWith('-')
  const read = readNumber(typed.trim().replace(/^-/, ''))
  if (read.kind !== 'number') return null
  return negative ? -read.value : read.value
}
