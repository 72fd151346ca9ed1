import type { ParsedInput, Result } from '../../contract/contract.ts'
import { refuse } from '../../contract/refusal.ts'
import { isPiece } from '../../domain/crops/pieces.ts'
import { crossingBand, type Threshold } from '../../domain/viability/band.ts'
import type { Keeping } from '../../domain/viability/equation.ts'
import { homeYearsTold } from '../../domain/viability/home-years.ts'
import { moistureInAir } from '../../domain/viability/pace-model.ts'
import { howSure } from '../../domain/viability/words.ts'
import { message } from '../../messages/message.ts'
import type { Texts } from '../../messages/texts.ts'
import { flowingDocument } from '../../paper/drawing/flowing-document.ts'
import { rulerPage } from '../../paper/ruler-page.ts'
import { type KeepingPlace, type StorageCard, storageCardParts } from '../../paper/storage-cards.ts'
import { rowWith } from '../../queries/rows.ts'
import { slipLines } from '../../queries/tray-rows.ts'
import { withdrawal } from '../../schema/stock-tables.ts'
import type { Reading } from '../book/context.ts'
import { lotOrRefuse } from '../book/new-lot.ts'
import { mustBeRead } from '../book/seed-words.ts'
import { settingsOf } from '../book/settings.ts'
import { itemsOrRefuse } from '../book/tray.ts'
import { forecastLots, type LotForecast } from '../forecast/lot-forecast.ts'
import { PlacesAgeing } from '../storage/place-ageing.ts'
import { documentFacts, made, paperTexts, textsFor } from './document.ts'
import { seedOnPaper } from './seed-facts.ts'

/** Air that home-dried seed is taken to have come to rest with before it is closed in. Judgement: a good drying box does it. */
const DRIED_AT = { celsius: 20, humidity: 0.25 } as const
/** A gardener sows thicker where a library would grow again: half is where it stops to be worth it. Common practice, no source. */
const UNTIL_HALF: Threshold = { part: 0.5, of: 'all-seeds' }
const DAYS_IN_YEAR = 365.25

const PLACES = [
  { place: 'cupboard', celsius: 20, dried: false },
  { place: 'fridge', celsius: 5, dried: true },
  { place: 'freezer', celsius: -18, dried: true },
] as const

/**
 * A card for each lot: years until half would sprout, by place; of what went out on a slip in the language of who took it.
 *
 * Refuses where no lot is named.
 */
export async function printStorageCards(
  reading: Reading,
  input: ParsedInput<'keep-card.print'>,
): Promise<Result<'keep-card.print'>> {
  const own = await paperTexts(reading)
  const wanted = [
    ...input.lotIds.map((lotId) => ({ lotId, texts: own })),
    ...(await lotsOfSlips(reading, input.itemIds)),
  ]
  if (wanted.length === 0) refuse('nothing-to-print', message('print.which-card'), { field: 'lotIds' })
  const ids = [...new Set(wanted.map(({ lotId }) => lotId))]
  const rows = new Map(ids.map((lotId, index) => [lotId, lotOrRefuse(reading, lotId, `lotIds.${index}`)]))
  const forecasts = forecastLots(reading, ids, settingsOf(reading), new PlacesAgeing(reading))
  const { libraryName } = settingsOf(reading)
  const once = new Map(wanted.map((card) => [`${card.lotId} ${card.texts.locale}`, card]))
  const cards = [...once.values()].flatMap(({ lotId, texts }): StorageCard[] => {
    const row = rows.get(lotId)
    if (row === undefined) return []
    const forecast = forecasts.find((each) => each.lotId === lotId)
    return [
      {
        name: seedOnPaper(row, texts),
        lotNumber: row.lotNumber,
        ...yearsOf(reading, forecast, texts),
        cautions: mustBeRead(reading, [lotId]).map(texts.say),
        pieces: isPiece(row.countedUnit),
        libraryName,
        texts,
      },
    ]
  })
  const facts = await documentFacts(
    reading,
    message('paper.title-cards'),
    cards.map(({ texts }) => texts),
  )
  const printed = await flowingDocument({ parts: storageCardParts(cards), ...facts })
  return made(printed, `how-to-keep-${reading.today}.pdf`)
}

async function lotsOfSlips(reading: Reading, itemIds: readonly number[]) {
  if (itemIds.length === 0) return []
  const slips = itemsOrRefuse(reading, itemIds, 'itemIds').map(async ({ withdrawalId }) => {
    if (withdrawalId === null) return []
    const visit = rowWith(reading.sqlite, withdrawal, { id: withdrawalId })
    const texts = await textsFor(reading, visit?.personId ?? null)
    return slipLines(reading.sqlite, withdrawalId).map(({ lotId }) => ({ lotId, texts }))
  })
  return (await Promise.all(slips)).flat()
}

function yearsOf(
  reading: Reading,
  computed: LotForecast | undefined,
  { say, text }: Texts,
): Pick<StorageCard, 'places' | 'notTold' | 'howSure'> {
  if (computed === undefined || computed.kind === 'refused') {
    const notTold = computed === undefined ? '' : say(computed.because)
    return { places: [], notTold, howSure: [] }
  }
  const { forecast, ageing, model, crop, harvestKnown, yearsWeighedIn, merged } = computed
  const crossing = crossingBand(forecast.learnt.posterior, UNTIL_HALF)
  const lost = ageing.lostOn(reading.today)
  const remarks = new Set<Parameters<typeof howSure>[3][number]>()
  const places = PLACES.map(({ place: name, celsius, dried }): KeepingPlace => {
    const place = text(`paper.card-${name}`, { temperature: { celsius, about: true } })
    const how = text(`paper.card-${name}-how`)
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
  const facts = await documentFacts(reading, message('paper.title-ruler'))
  return made(await rulerPage({ ...facts, offsetMm }), `ruler-${facts.paper}.pdf`)
}
