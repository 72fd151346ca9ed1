import type { ShelfRow } from '../../contract/stock-operations.ts'
import type { Untold } from '../../contract/told.ts'
import { cautionName } from '../../domain/cautions/caution-text.ts'
import { harvestTold } from '../../domain/dates/harvest-year.ts'
import { bareNumber, readScanCode } from '../../domain/numbers/scan-code.ts'
import { shareName } from '../../domain/terms/gift-limits.ts'
import {
  type OfferedLot,
  oldestGoodLotFirst,
  whyOffered,
} from '../../domain/withdrawal/oldest-good-lot-first.ts'
import { limitsOfAccession } from '../../queries/gift-limits.ts'
import {
  anyLotBeginsWith,
  type LotRow,
  livesOfAccessions,
  lotIdByBare,
  lotRow,
  type ShelfFilter,
  shelfPage,
  shelfTotal,
} from '../../queries/lot-rows.ts'
import { matchFor } from '../../queries/search-words.ts'
import { heldIn } from '../book/amounts.ts'
import type { Reading, Reads } from '../book/context.ts'
import { textAndCropsCalled } from '../book/crops-called.ts'
import { type CollectionPolicy, lifeOf, livingOf, standingOf, thresholdOf } from '../book/living-stock.ts'
import { harvestOf } from '../book/new-lot.ts'
import { searchPeople } from '../book/people.ts'
import { cautionsTold } from '../book/seed-words.ts'
import { settingsOf } from '../book/settings.ts'
import { accessionsInState } from './needs.ts'

export const listLots: Reads<'lot.list'> = (reading, input) => {
  const { text, state, sort, descending, offset, limit, ...narrow } = input
  const filter: ShelfFilter = {
    ...narrow,
    ...searchFor(reading, text),
    ...(state === undefined ? {} : { accessionIds: accessionsInState(reading, state) }),
  }
  const rows = shelfPage(reading.sqlite, filter, sort, descending, { offset, limit })
  return { rows: shelfRows(reading, rows), total: shelfTotal(reading.sqlite, filter) }
}

/** A typed text as a question: the beginning of a lot's number, else the beginnings of words. */
function searchFor(reading: Reading, text: string): Pick<ShelfFilter, 'barePrefix' | 'match'> {
  const bare = bareNumber(text)
  if (/^[A-Z]/.test(bare) && /\d/.test(bare) && anyLotBeginsWith(reading.sqlite, bare))
    return { barePrefix: bare }
  const match = matchFor(textAndCropsCalled(text))
  return match === null ? {} : { match }
}

/** Rows of the shelf with how their accessions stand, in the order given. */
function shelfRows(reading: Reading, rows: readonly LotRow[]): Untold<ShelfRow>[] {
  const policy = settingsOf(reading)
  const ids = [...new Set(rows.map((row) => row.accessionId))]
  const lotsOf = Map.groupBy(livesOfAccessions(reading.sqlite, ids), (row) => row.accessionId)
  const standings = new Map([...lotsOf].map(([id, lots]) => [id, standingOf(lots, policy)]))
  return rows.map((row) => {
    const standing = standings.get(row.accessionId)
    if (standing === undefined) throw new Error(`No standing for accession ${row.accessionId}`)
    return {
      lotId: row.lotId,
      lotNumber: row.lotNumber,
      accessionId: row.accessionId,
      variety: row.variety,
      cropId: row.cropId,
      crop: row.crop,
      harvest: harvestTold(harvestOf(row)),
      role: row.role,
      place: row.place ?? '',
      donor: row.donor ?? '',
      quantity: heldIn(row),
      living: livingOf(row),
      quarantined: row.quarantineReason !== null,
      state: standing.state,
      keep: standing.keep,
      accessionLiving: standing.living.about,
      accessionLow: standing.living.low,
      accessionHigh: standing.living.high,
      forecastOn: row.forecastOn ?? '',
    }
  })
}

const MOST_OFFERED = 200

export const offerLots: Reads<'withdrawal.list-lots'> = (reading, input) => {
  const policy = settingsOf(reading)
  const scanned = lotIdByBare(reading.sqlite, readScanCode(input.text) ?? bareNumber(input.text))
  const filter: ShelfFilter = {
    role: 'working',
    quarantined: false,
    emptyToo: false,
    offered: true,
    ...searchFor(reading, input.text),
  }
  const rows = shelfPage(reading.sqlite, filter, 'variety', false, { offset: 0, limit: MOST_OFFERED })
  const offered = rows
    .map((row) => ({ row, lot: offeredLot(reading, row, policy) }))
    .toSorted(
      (a, b) =>
        Number(b.row.lotId === scanned) - Number(a.row.lotId === scanned) ||
        (a.row.varietyId === b.row.varietyId
          ? oldestGoodLotFirst(a.lot, b.lot) || a.row.lotId - b.row.lotId
          : a.row.variety.localeCompare(b.row.variety)),
    )
    .slice(0, input.limit)
  const shown = shelfRows(
    reading,
    offered.map(({ row }) => row),
  )
  return {
    lots: shown.map((line, index) => {
      const choice = offered[index]
      if (choice === undefined) throw new Error('A row of the shelf without its lot')
      return { ...line, packetSeeds: choice.row.packetSeeds, why: whyOffered(choice.lot) }
    }),
  }
}

function offeredLot(reading: Reading, row: LotRow, policy: CollectionPolicy): OfferedLot {
  const { tested, sprouted, testedOn: on } = row
  const harvest = harvestOf(row)
  const who = shareName(limitsOfAccession(reading.sqlite, row.accessionId))
  return {
    test:
      tested === null || sprouted === null || on === null ? null : { tested, sprouted, year: on.slice(0, 4) },
    viability: lifeOf(row).viability,
    threshold: thresholdOf(row, policy),
    harvest: harvest.kind === 'unknown' ? '' : harvestTold(harvest),
    harvestYear: row.harvestTo ?? 0,
    careful: [
      ...(who === null ? [] : [who]),
      ...cautionsTold(reading, [row.lotId]).map(({ caution }) => cautionName(caution)),
    ],
  }
}

export const findAnything: Reads<'collection.search'> = (reading, input) => {
  const text = input.text.trim()
  const bare = bareNumber(text)
  const scanned = readScanCode(text)
  const byScan = scanned === null || text.includes('-') ? undefined : lotIdByBare(reading.sqlite, scanned)
  const byNumber = lotIdByBare(reading.sqlite, bare)
  const named = [...new Set([byScan, byNumber].filter((id) => id !== undefined))]
  // A number typed bare may also read as a scan of another lot: then both are shown and neither is opened.
  const exactLotId = named.length === 1 ? (named[0] ?? null) : null
  const looksScanned = /^[A-Z]+\d{4,}[A-Z]{1,2}[A-Z0-9]$/.test(text)
  const scan =
    byScan !== undefined ? 'fits' : looksScanned && named.length === 0 ? 'does-not-fit' : 'not-a-scan'
  if (text === '') return { exactLotId: null, scan: 'not-a-scan', lots: [], people: [] }
  const exact = named.flatMap((lotId) => lotRow(reading.sqlite, lotId) ?? [])
  const filter = { emptyToo: true, ...searchFor(reading, text) }
  const rows =
    exact.length > 0
      ? exact
      : shelfPage(reading.sqlite, filter, 'number', false, { offset: 0, limit: input.limit })
  return {
    exactLotId,
    scan,
    lots: rows.map((row) => ({
      lotId: row.lotId,
      lotNumber: row.lotNumber,
      variety: row.variety,
      crop: row.crop,
      words: heldIn(row).words,
    })),
    people: searchPeople(reading, { text, limit: input.limit }).people.map(({ personId, name, town }) => ({
      personId,
      name,
      town,
    })),
  }
}
