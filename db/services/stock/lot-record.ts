import { desc, eq } from 'drizzle-orm'
import type { ParsedInput, Result } from '../../contract/contract.ts'
import { type CountedUnitName, countedUnit } from '../../domain/crops/counted-unit.ts'
import { harvestTold } from '../../domain/dates/harvest-year.ts'
import { isoDate } from '../../domain/dates/iso-date.ts'
import { wilsonInterval } from '../../domain/germination/wilson.ts'
import { keepingTold } from '../../domain/keeping/keeping.ts'
import { overriddenTold } from '../../domain/ledger/overridden.ts'
import { scanCode } from '../../domain/numbers/scan-code.ts'
import { limitsTold } from '../../domain/terms/gift-limits.ts'
import { gramsPerHundred } from '../../domain/weights/hundred-seed-weight.ts'
import { type Message, message } from '../../messages/message.ts'
import { heldBefore } from '../../queries/duplicate-rows.ts'
import { resultsOfLot } from '../../queries/germination-tests.ts'
import { limitsOfAccession } from '../../queries/gift-limits.ts'
import { ledgerOf, type MovementRow } from '../../queries/ledger.ts'
import { type LotFacts, lotFacts, parentsOf, placeHistoryOf } from '../../queries/lot-facts.ts'
import { type LotRow, lotsOfAccessions } from '../../queries/lot-rows.ts'
import { seedWeight } from '../../schema/stock-tables.ts'
import { gramsTold, heldIn, weightInForce } from '../book/amounts.ts'
import { cameBack } from '../book/came-back.ts'
import type { Reading } from '../book/context.ts'
import { livingOf, livingStockOf, thresholdOf } from '../book/living-stock.ts'
import { harvestOf, lotOrRefuse } from '../book/new-lot.ts'
import { reasonOf } from '../book/quarantine-reason.ts'
import { synonymsOf } from '../book/seed-words.ts'
import { settingsOf } from '../book/settings.ts'
import { lotsOnTheDay } from '../forecast/chance-above.ts'
import { resultOfTest } from '../germination/test-counts.ts'
import { cautionsOfLot } from './lot-cautions.ts'
import { shownWeight } from './seed-weights.ts'

type LotRecord = Result<'lot.get'>

export function getLot(reading: Reading, input: ParsedInput<'lot.get'>): LotRecord {
  const row = lotOrRefuse(reading, input.lotId, 'lotId')
  const facts = lotFacts(reading.sqlite, row.lotId)
  const siblings = lotsOfAccessions(reading.sqlite, [row.accessionId])
  const weights = weightsOf(reading, row)
  const limits = limitsOfAccession(reading.sqlite, row.accessionId)
  return {
    ...identityOf(row, facts),
    ...originOf(row, facts),
    limits,
    limitsTold: limitsTold(limits, reading.today),
    synonyms: synonymsOf(reading, row.varietyId),
    placeHistory: placeHistoryOf(reading.sqlite, row.lotId),
    heldBefore: heldBefore(reading.sqlite, row.lotId),
    cautions: cautionsOfLot(reading, row.lotId),
    cameBack: cameBack(reading, row.lotId),
    keeping: {
      breeding: row.breeding,
      policy: row.policy,
      words: keepingTold(row),
      on: row.decidedOn ?? '',
      reason: row.decidedWhy ?? '',
    },
    quantity: heldIn(row),
    weight: weights[0] && row.weightId !== null ? weights[0] : typicalWeight(row),
    weights,
    germination: resultsOf(reading, row),
    stock: livingStockOf(siblings, settingsOf(reading)),
    lotLiving: livingOf(row),
    siblings: siblings
      .filter((sibling) => sibling.lotId !== row.lotId)
      .map((sibling) => ({
        lotId: sibling.lotId,
        lotNumber: sibling.lotNumber,
        role: sibling.role,
        harvest: harvestTold(harvestOf(sibling)),
        quantity: heldIn(sibling),
        living: livingOf(sibling),
      })),
    parents: parentsOf(reading.sqlite, row.lotId),
    ledger: ledgerLines(ledgerOf(reading.sqlite, row.lotId), row.countedUnit),
  }
}

function identityOf(row: LotRow, facts: LotFacts) {
  return {
    lotId: row.lotId,
    lotNumber: row.lotNumber,
    scanCode: scanCode(row.lotNumber),
    accessionId: row.accessionId,
    accessionNumber: row.accessionNumber,
    variety: row.variety,
    varietyId: row.varietyId,
    cropId: row.cropId,
    crop: row.crop,
    species: facts.species,
    unit: countedUnit(row.countedUnit),
    role: row.role,
    basis: row.basis,
    packetSeeds: row.packetSeeds,
    quarantined: row.quarantineReason !== null,
    quarantineReason: reasonOf(row.quarantineReason),
  }
}

function originOf(row: LotRow, facts: LotFacts) {
  return {
    harvest: harvestTold(harvestOf(row)),
    generation: row.generation,
    grower: facts.grower ?? '',
    grownAt: facts.grownAt,
    placeId: facts.placeId,
    place: row.place ?? '',
    heldBy: facts.heldBy,
    heldSince: facts.heldSince ?? '',
    donor: row.donor ?? '',
    donorId: facts.donorId,
    receivedOn: facts.receivedOn,
    donorWords: facts.donorWords,
    story: facts.story,
    terms: facts.terms,
  }
}

function weightsOf(reading: Reading, row: LotRow): LotRecord['weights'] {
  return reading.db
    .select()
    .from(seedWeight)
    .where(eq(seedWeight.lotId, row.lotId))
    .orderBy(desc(eq(seedWeight.id, row.weightId ?? 0)), desc(seedWeight.measuredOn), desc(seedWeight.id))
    .all()
    .map(shownWeight)
}

function typicalWeight(row: LotRow): LotRecord['weight'] {
  const { weight } = weightInForce(row)
  const words = message(row.cropWeightUg === null ? 'weight.guess' : 'weight.usual-weigh', {
    weight: gramsTold(weight),
    crop: row.crop,
  })
  return {
    weightId: null,
    measuredOn: '',
    gramsPerHundred: gramsPerHundred(weight),
    basis: 'crop-default',
    replicates: 0,
    seedsCounted: 0,
    coefficientOfVariation: null,
    judgement: 'not-judged',
    words,
  }
}

function resultsOf(reading: Reading, row: LotRow): LotRecord['germination'] {
  const threshold = thresholdOf(row, settingsOf(reading))
  const results = resultsOfLot(reading.sqlite, row.lotId)
  const lotOnDayOf = lotsOnTheDay(reading, results.length === 0 ? [] : [row.lotId])(row.lotId)
  return results.map((result) => {
    const { tested, sprouted } = result
    const [low, high] = wilsonInterval(sprouted, tested)
    const percent = (part: number) => Math.round(1_000 * part) / 10
    const choice = { hard: result.hardAlive === 1, fresh: result.freshAlive === 1 }
    return {
      testId: result.testId,
      testedOn: result.testedOn,
      tested,
      sprouted,
      percent: percent(sprouted / tested),
      low: percent(low),
      high: percent(high),
      words: resultOfTest(
        reading,
        { testId: result.testId, on: isoDate(result.testedOn) },
        threshold,
        choice,
        lotOnDayOf,
      ),
    }
  })
}

function ledgerLines(movements: readonly MovementRow[], unit: CountedUnitName): LotRecord['ledger'] {
  let balanceCount = 0
  let balanceMassMg = 0
  return movements.map((movement) => {
    balanceCount += movement.count
    balanceMassMg += movement.massMg
    return {
      movementId: movement.movementId,
      entryId: movement.entryId,
      on: movement.on,
      kind: movement.kind,
      count: movement.count,
      massMg: movement.massMg,
      balanceCount,
      balanceMassMg,
      measured: movement.measured,
      gramsPerHundred: movement.weightUg === null ? null : movement.weightUg / 1_000_000,
      person: movement.person ?? '',
      purpose: movement.purpose ?? '',
      note: movement.note,
      overridden: overriddenTold(movement.overridden),
      words: movementTold(movement, unit),
      takenBack: movement.reversed === 1,
      undoable: movement.reversed === 0 && movement.kind !== 'reversal',
    }
  })
}

/** What changed, the observed number first: '+50 seeds counted (12.5 g)'. */
function movementTold({ measured, count, massMg }: MovementRow, unit: CountedUnitName): Message {
  const sign = (value: number) => (value < 0 ? 'minus' : 'plus')
  return message(`ledger.${measured}`, {
    count: Math.abs(count),
    unit,
    sign: sign(count),
    mass: { mg: Math.abs(massMg) },
    massSign: sign(massMg),
  })
}
