import type { ParsedInput, Result } from '../../contract/contract.ts'
import { refuse } from '../../contract/refusal.ts'
import { crossingBand, type Threshold } from '../../domain/viability/band.ts'
import type { Keeping } from '../../domain/viability/equation.ts'
import { homeYearsTold } from '../../domain/viability/home-years.ts'
import { moistureInAir } from '../../domain/viability/pace-model.ts'
import { howSure } from '../../domain/viability/words.ts'
import type { Texts } from '../../messages/texts.ts'
import { textsOf } from '../../messages/texts-of.ts'
import { flowingDocument } from '../../paper/drawing/flowing-document.ts'
import { rulerPage } from '../../paper/ruler-page.ts'
import { type KeepingPlace, type StorageCard, storageCardParts } from '../../paper/storage-cards.ts'
import { slipLines } from '../../queries/tray-rows.ts'
import type { Reading } from '../book/context.ts'
import { lotOrRefuse } from '../book/new-lot.ts'
import { cautionsOf } from '../book/seed-words.ts'
import { settingsOf } from '../book/settings.ts'
import { itemsOrRefuse } from '../book/tray.ts'
import { forecastLots, type LotForecast } from '../forecast/lot-forecast.ts'
import { PlacesAgeing } from '../storage/place-ageing.ts'
import { documentFacts, made } from './document.ts'

/** Air that home-dried seed is taken to have come to rest with before it is closed in. Judgement: a good drying box does it. */
const DRIED_AT = { celsius: 20, humidity: 0.25 } as const
/** A gardener sows thicker where a library would grow again: half is where it stops to be worth it. Common practice, no source. */
const UNTIL_HALF: Threshold = { part: 0.5, of: 'all-seeds' }
const DAYS_IN_YEAR = 365.25

const PLACES = [
  {
    place: 'In a cupboard, about 20 °C',
    how: 'In its paper packet, as moist as the air of a dry room makes it.',
    celsius: 20,
    dried: false,
  },
  { place: 'In a fridge, about 5 °C', how: 'Dried first, in a closed glass jar.', celsius: 5, dried: true },
  {
    place: 'In a freezer, about -18 °C',
    how: 'Only if thoroughly dry, in a closed glass jar. If in doubt, the fridge.',
    celsius: -18,
    dried: true,
  },
] as const

/** A card for each lot: years until half would sprout, by place. Refuses where no lot is named. */
export async function printStorageCards(
  reading: Reading,
  input: ParsedInput<'keep-card.print'>,
): Promise<Result<'keep-card.print'>> {
  const wanted = [...new Set([...input.lotIds, ...lotsOfSlips(reading, input.itemIds)])]
  if (wanted.length === 0) {
    refuse('nothing-to-print', 'Choose a lot, or a slip with seed that went out.', { field: 'lotIds' })
  }
  const rows = wanted.map((lotId, index) => lotOrRefuse(reading, lotId, `lotIds.${index}`))
  const forecasts = forecastLots(reading, wanted, settingsOf(reading), new PlacesAgeing(reading))
  const { libraryName } = settingsOf(reading)
  const { say } = await textsOf(settingsOf(reading))
  const cards = rows.map((row): StorageCard => {
    const forecast = forecasts.find(({ lotId }) => lotId === row.lotId)
    return {
      name: `${row.crop} ‘${row.variety}’`,
      lotNumber: row.lotNumber,
      ...yearsOf(reading, forecast, say),
      cautions: cautionsOf(reading, [row.lotId]).map(({ text }) => text),
      libraryName,
    }
  })
  const printed = await flowingDocument({
    parts: storageCardParts(cards),
    ...(await documentFacts(reading, 'How to keep seed')),
  })
  return made(printed, `how-to-keep-${reading.today}.pdf`)
}

function lotsOfSlips(reading: Reading, itemIds: readonly number[]): number[] {
  if (itemIds.length === 0) return []
  return itemsOrRefuse(reading, itemIds, 'itemIds').flatMap(({ withdrawalId }) =>
    withdrawalId === null ? [] : slipLines(reading.sqlite, withdrawalId).map(({ lotId }) => lotId),
  )
}

function yearsOf(
  reading: Reading,
  computed: LotForecast | undefined,
  say: Texts['say'],
): Pick<StorageCard, 'until' | 'places' | 'notTold' | 'howSure'> {
  if (computed === undefined || computed.kind === 'refused') {
    const notTold = computed === undefined ? '' : say(computed.because)
    return { until: '', places: [], notTold, howSure: [] }
  }
  const { forecast, ageing, model, crop, harvestKnown, yearsWeighedIn, merged } = computed
  const crossing = crossingBand(forecast.learnt.posterior, UNTIL_HALF)
  const lost = ageing.lostOn(reading.today)
  const remarks = new Set<Parameters<typeof howSure>[3][number]>()
  const places = PLACES.map(({ place, how, celsius, dried }): KeepingPlace => {
    const moisture = dried ? moistureInAir(crop.oil, DRIED_AT) : moistureInAir(crop.oil)
    const keeping: Keeping = { celsius, moisture }
    const pace = model.pace(keeping)
    if (pace.kind === 'refused') return { place, how, years: say(pace.because) }
    for (const remark of pace.remarks) remarks.add(remark)
    const years = (of: number) => (Math.max(0, of - lost) * pace.sigmaDays) / DAYS_IN_YEAR
    const { low, middle, high } = crossing
    return {
      place,
      how,
      years: say(homeYearsTold({ low: years(low), middle: years(middle), high: years(high) })),
    }
  })
  return {
    until:
      'until half of it would still sprout; before that, sow a little thicker. Nine of ten lots should fall between the two figures.',
    places,
    notTold: '',
    howSure: howSure(
      forecast,
      model,
      { harvest: harvestKnown, keeping: false, usualDays: false, yearsWeighedIn, merged },
      [...remarks],
    ).map(say),
  }
}

/** The ruler page, moved by an offset in mm. */
export async function printRuler(
  reading: Reading,
  { offsetMm }: ParsedInput<'ruler.print'>,
): Promise<Result<'ruler.print'>> {
  const facts = await documentFacts(reading, 'Ruler page')
  return made(await rulerPage({ ...facts, offsetMm }), `ruler-${facts.paper}.pdf`)
}
