import type { GrowingSite } from '../../../db/contract/regeneration-operations.ts'
import { CardForm } from '../../shared/card-form/card-form.tsx'
import { useCardForm } from '../../shared/card-form/use-card-form.ts'
import { wholeNumber } from '../../shared/card-form/whole-number.ts'
import { useRead } from '../../shared/client/use-read.ts'
import { readTypedNumber } from '../../shared/format/manner.ts'
import { useTexts } from '../../shared/format/use-texts.ts'
import { TextField } from '../../shared/table-form/fields.tsx'
import { CropsPicked } from './crops-picked.tsx'

interface GardenFormProps {
  /** Null: a new one. */
  readonly site: GrowingSite | null
  readonly onClose: () => void
}

const WAYS = ['none', 'sketch', 'earth'] as const
type Way = (typeof WAYS)[number]

/** A garden: whose, how much bed, how long its season, where it lies, which crops it takes, what flowers nearby. */
export function GardenForm({ site, onClose }: GardenFormProps) {
  const { t } = useTexts()
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
  const [along, across] =
    typed.way === 'earth'
      ? [t('season.latitude'), t('season.longitude')]
      : [t('season.metres-east'), t('season.metres-north')]
  const unless = (isRead: boolean, problem: string) => (isRead ? undefined : problem)
  return (
    <CardForm
      title={site === null ? t('season.new-garden') : site.name}
      level={2}
      sendWord={t('season.save-garden')}
      {...form.sending(read())}
    >
      {form.textField('name', t('season.garden-name'))}
      {form.selectField('grower', t('season.grower'), [
        { value: '', label: t('season.nobody-named') },
        ...growers.map(({ personId, name }) => ({ value: String(personId), label: name })),
      ])}
      {form.textField('area', t('season.free-bed'), {
        problem: unless(missing !== 'bed', t('season.type-bed')),
      })}
      {form.textField('most', t('season.most-varieties'))}
      {form.textField('season', t('season.days-without-frost'), {
        hint: t('season.days-hint'),
        problem: unless(missing !== 'season', t('season.type-days')),
      })}
      {form.selectField(
        'way',
        t('season.where-it-lies'),
        WAYS.map((value) => ({ value, label: t(`season.place-${value}`) })),
      )}
      {wantsPlace && (
        <>
          {form.textField('first', along, {
            path: 'place',
            problem: unless(missing !== 'place', t('season.type-both')),
          })}
          {form.textField('second', across)}
        </>
      )}
      <CropsPicked
        label={t('season.crops-taken')}
        none={t('season.any-crop')}
        picked={typed.takes.map((cropId) => ({ cropId, crop: nameOf(cropId) }))}
        onAdd={(cropId) => change({ takes: [...typed.takes, cropId] })}
        onTakeOut={(cropId) => change({ takes: typed.takes.filter((other) => other !== cropId) })}
      />
      <CropsPicked
        label={t('season.flowers-nearby')}
        none={t('season.nothing-known')}
        picked={typed.near.map(({ cropId }) => ({ cropId, crop: nameOf(cropId) }))}
        onAdd={(cropId) => change({ near: [...typed.near, { cropId, metres: '' }] })}
        onTakeOut={(cropId) => change({ near: typed.near.filter((other) => other.cropId !== cropId) })}
        beside={({ cropId, crop }) => (
          <TextField
            label={t('season.how-far', { crop })}
            value={typed.near.find((one) => one.cropId === cropId)?.metres ?? ''}
            onChange={(metres) =>
              change({ near: typed.near.map((one) => (one.cropId === cropId ? { cropId, metres } : one)) })
            }
            problem={
              missing === 'near' && (near.find((one) => one.cropId === cropId)?.metres ?? -1) < 0
                ? t('season.type-metres')
                : undefined
            }
          />
        )}
      />
      {form.textField('note', t('season.note-field'), { long: true })}
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
  const read = readTypedNumber(typed.trim().replace(/^-/, ''))
  return read !== null && negative ? -read : read
}
