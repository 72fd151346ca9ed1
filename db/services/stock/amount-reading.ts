import { eq } from 'drizzle-orm'
import type { ParsedInput } from '../../contract/contract.ts'
import type { Amount } from '../../domain/amounts/amount.ts'
import {
  aboutCount,
  countInWords,
  decimalMark,
  type Manner,
  massInWords,
  massToFigures,
} from '../../domain/amounts/in-words.ts'
import { readAmount } from '../../domain/amounts/read-amount.ts'
import { type CountedUnit, countedUnit } from '../../domain/crops/counted-unit.ts'
import { weightUnknown } from '../../domain/crops/unknown.ts'
import { bothNumbers } from '../../domain/ledger/movement.ts'
import {
  type HundredSeedWeight,
  relativeDoubt,
  weightStatistics,
} from '../../domain/weights/hundred-seed-weight.ts'
import { readSample } from '../../domain/weights/read-sample.ts'
import { lotRow } from '../../queries/lot-rows.ts'
import { crop } from '../../schema/reference-tables.ts'
import { countDoubt, cropWeight, plausibleBand, weightInForce, weightInWords } from '../book/amounts.ts'
import type { Reading, Reads } from '../book/context.ts'
import { settingsOf } from '../book/settings.ts'
import { misweighed } from './seed-weights.ts'

/** What ties count to mass while an amount is being typed. */
interface Scale {
  readonly weight: HundredSeedWeight
  readonly doubt: number
  readonly note: string
  readonly warning: string | null
  readonly unit: CountedUnit
  readonly packetSeeds: number | null
  /** The crop whose weight nobody has said, where the weight is a guess; else null. */
  readonly guessed: string | null
}

export const readTypedAmount: Reads<'amount.preview'> = (reading, input) => {
  const scale = scaleFor(reading, input)
  const nothing = { choices: [], count: null, massMg: null, weightNote: '', warning: scale?.warning ?? null }
  if (input.text.trim() === '') return { reading: 'empty', words: '', ...nothing }
  const manner = settingsOf(reading)
  const read = readAmount(input.text, {
    packetSeeds: scale?.packetSeeds ?? null,
    decimalMark: decimalMark(manner),
  })
  if (read.kind === 'unreadable') return { reading: 'unreadable', words: read.because, ...nothing }
  if (read.kind === 'ask')
    return { reading: 'ask', words: read.question, ...nothing, choices: [...read.choices] }
  const unit = scale?.unit ?? countedUnit('seed')
  if (scale === null) {
    const { count, mass } = observed(read.amount)
    return {
      reading: 'amount',
      words: observedWords(read.amount, unit, manner),
      ...nothing,
      count,
      massMg: mass,
    }
  }
  if (scale.guessed !== null) {
    const { count, mass } = observed(read.amount)
    const words =
      read.amount.kind === 'mass'
        ? `${observedWords(read.amount, unit, manner)}, how many ${unit.many} is not known`
        : observedWords(read.amount, unit, manner)
    const warning = scale.warning ?? (read.amount.kind === 'mass' ? weightUnknown(scale.guessed) : null)
    return { reading: 'amount', words, ...nothing, count, massMg: mass, warning }
  }
  const both = bothNumbers(read.amount, scale.weight)
  const derived =
    read.amount.kind === 'mass'
      ? `${aboutCount(both.count, scale.doubt, manner)} ${both.count === 1 ? unit.one : unit.many}`
      : `about ${massToFigures(both.mass, 3, manner)}`
  return {
    reading: 'amount',
    words: `${observedWords(read.amount, unit, manner)}, ${derived}`,
    choices: [],
    count: both.count,
    massMg: both.mass,
    weightNote: scale.note,
    warning: scale.warning,
  }
}

function observed(amount: Amount): { count: number | null; mass: number | null } {
  return amount.kind === 'mass' ? { count: null, mass: amount.mass } : { count: amount.count, mass: null }
}

function observedWords(amount: Amount, unit: CountedUnit, manner: Manner): string {
  if (amount.kind === 'mass') return massInWords(amount.mass, manner)
  return `${amount.estimated ? 'about ' : ''}${countInWords(amount.count, unit, manner)}`
}

function scaleFor(reading: Reading, input: ParsedInput<'amount.preview'>): Scale | null {
  const row = input.lotId === undefined ? undefined : lotRow(reading.sqlite, input.lotId)
  const manner = settingsOf(reading)
  if (row !== undefined) {
    const { weight, basis } = weightInForce(row)
    const note = `${weightInWords(weight, manner)}, ${basis === 'measured' ? 'measured' : `usual for ${row.crop}, not measured`}`
    const doubt = row.basis === 'counted' ? 0.1 : countDoubt(row)
    return {
      weight,
      doubt,
      note,
      warning: null,
      unit: countedUnit(row.countedUnit),
      packetSeeds: row.packetSeeds,
      guessed: basis === 'guess' ? row.crop : null,
    }
  }
  const kind =
    input.cropId === undefined
      ? undefined
      : reading.db.select().from(crop).where(eq(crop.id, input.cropId)).get()
  return kind === undefined ? null : scaleOfCrop(kind, input.sample, manner)
}

function scaleOfCrop(kind: typeof crop.$inferSelect, typedSample: string, manner: Manner): Scale {
  const common = { unit: countedUnit(kind.countedUnit), packetSeeds: kind.packetSeeds }
  const band = {
    crop: kind.commonName,
    plausibleLowG: kind.plausibleLowG,
    plausibleHighG: kind.plausibleHighG,
  }
  const sample = readSample(typedSample)
  if (sample.kind === 'sample') {
    const statistics = weightStatistics([sample.sample])
    const weight = statistics.hundredSeedWeight
    return {
      ...common,
      weight,
      doubt: relativeDoubt('measured', weight, statistics, null),
      note: `${weightInWords(weight, manner)}, from the sample`,
      warning: misweighed(weight, band, manner),
      guessed: null,
    }
  }
  const weight = cropWeight(kind.hundredSeedWeightUg)
  return {
    ...common,
    weight,
    doubt: relativeDoubt(
      'crop-default',
      weight,
      { replicates: 0, seedsCounted: 0, coefficientOfVariation: null },
      plausibleBand(band),
    ),
    note: `${weightInWords(weight, manner)}, usual for ${kind.commonName}, not measured`,
    warning: sample.kind === 'unreadable' ? sample.because : null,
    guessed: kind.hundredSeedWeightUg === null ? kind.commonName : null,
  }
}
