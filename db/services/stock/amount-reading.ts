import { eq } from 'drizzle-orm'
import type { ParsedInput } from '../../contract/contract.ts'
import type { Amount } from '../../domain/amounts/amount.ts'
import { type DecimalMark, decimalMark, massInWords, toFigures } from '../../domain/amounts/in-words.ts'
import { readAmount } from '../../domain/amounts/read-amount.ts'
import type { CountedUnitName } from '../../domain/crops/counted-unit.ts'
import { weightUnknown } from '../../domain/crops/unknown.ts'
import { bothNumbers } from '../../domain/ledger/movement.ts'
import {
  type HundredSeedWeight,
  relativeDoubt,
  weightStatistics,
} from '../../domain/weights/hundred-seed-weight.ts'
import { readSample } from '../../domain/weights/read-sample.ts'
import { type Message, message } from '../../messages/message.ts'
import { lotRow } from '../../queries/lot-rows.ts'
import { crop } from '../../schema/reference-tables.ts'
import { countDoubt, cropWeight, gramsTold, plausibleBand, weightInForce } from '../book/amounts.ts'
import type { Reading, Reads } from '../book/context.ts'
import { settingsOf } from '../book/settings.ts'
import { misweighed } from './seed-weights.ts'

/** What ties count to mass while an amount is being typed. */
interface Scale {
  readonly weight: HundredSeedWeight
  readonly doubt: number
  readonly note: Message
  readonly warning: Message | null
  readonly unit: CountedUnitName
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
    return { reading: 'ask', words: read.question, ...nothing, choices: read.choices.map(({ told }) => told) }
  const { amount } = read
  const unit = scale?.unit ?? 'seed'
  if (scale === null || scale.guessed !== null) {
    const { count, mass } = observed(amount)
    const guessed = scale?.guessed ?? null
    const words =
      amount.kind === 'count'
        ? counted(amount, unit)
        : guessed === null
          ? massInWords(amount.mass, manner)
          : message('amount.mass-alone', { mass: { mg: amount.mass }, unit })
    const warning =
      scale?.warning ?? (guessed !== null && amount.kind === 'mass' ? weightUnknown(guessed) : null)
    return { reading: 'amount', words, ...nothing, count, massMg: mass, warning }
  }
  const both = bothNumbers(amount, scale.weight)
  return {
    reading: 'amount',
    words: bothTold(amount, both, scale),
    choices: [],
    count: both.count,
    massMg: both.mass,
    weightNote: scale.note,
    warning: scale.warning,
  }
}

const FIGURES_OF_A_DERIVED_MASS = 3

/** What was typed, and the other number that follows from it. */
function bothTold(
  amount: Amount,
  { count, mass }: { readonly count: number; readonly mass: number },
  { doubt, unit }: Scale,
): Message {
  if (amount.kind === 'mass') {
    const about = count * doubt >= 0.5
    const shown = about ? toFigures(count, doubt > 0.1 ? 2 : 3) : count
    return message(about ? 'amount.weighed-about' : 'amount.weighed', {
      mass: { mg: mass },
      count: shown,
      unit,
    })
  }
  return message(amount.estimated ? 'amount.held-about' : 'amount.held', {
    count,
    unit,
    mass: { mg: Number(mass.toPrecision(FIGURES_OF_A_DERIVED_MASS)), about: true },
  })
}

function observed(amount: Amount): { count: number | null; mass: number | null } {
  return amount.kind === 'mass' ? { count: null, mass: amount.mass } : { count: amount.count, mass: null }
}

function counted({ count, estimated }: Extract<Amount, { kind: 'count' }>, unit: CountedUnitName): Message {
  return message(estimated ? 'amount.seeds-about' : 'amount.seeds', { count, unit })
}

function scaleFor(reading: Reading, input: ParsedInput<'amount.preview'>): Scale | null {
  const row = input.lotId === undefined ? undefined : lotRow(reading.sqlite, input.lotId)
  if (row !== undefined) {
    const { weight, basis } = weightInForce(row)
    const grams = gramsTold(weight)
    const note =
      basis === 'measured'
        ? message('weight.measured', { weight: grams })
        : message('weight.usual', { weight: grams, crop: row.crop })
    const doubt = row.basis === 'counted' ? 0.1 : countDoubt(row)
    return {
      weight,
      doubt,
      note,
      warning: null,
      unit: row.countedUnit,
      packetSeeds: row.packetSeeds,
      guessed: basis === 'guess' ? row.crop : null,
    }
  }
  const kind =
    input.cropId === undefined
      ? undefined
      : reading.db.select().from(crop).where(eq(crop.id, input.cropId)).get()
  return kind === undefined ? null : scaleOfCrop(kind, input.sample, decimalMark(settingsOf(reading)))
}

function scaleOfCrop(kind: typeof crop.$inferSelect, typedSample: string, mark: DecimalMark): Scale {
  const common = { unit: kind.countedUnit, packetSeeds: kind.packetSeeds }
  const band = {
    crop: kind.commonName,
    plausibleLowG: kind.plausibleLowG,
    plausibleHighG: kind.plausibleHighG,
  }
  const sample = readSample(typedSample, mark)
  if (sample.kind === 'sample') {
    const statistics = weightStatistics([sample.sample])
    const weight = statistics.hundredSeedWeight
    return {
      ...common,
      weight,
      doubt: relativeDoubt('measured', weight, statistics, null),
      note: message('weight.from-sample', { weight: gramsTold(weight) }),
      warning: misweighed(weight, band),
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
    note: message('weight.usual', { weight: gramsTold(weight), crop: kind.commonName }),
    warning: sample.kind === 'unreadable' ? sample.because : null,
    guessed: kind.hundredSeedWeightUg === null ? kind.commonName : null,
  }
}
