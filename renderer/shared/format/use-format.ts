import type { Manner } from '../../../db/domain/amounts/in-words.ts'
import { useRead } from '../client/use-read.ts'
import { createFormat, type Format } from './format.ts'
import { UNTIL_TOLD } from './manner.ts'
import { useTexts } from './use-texts.ts'

/** The formats of the open collection. */
export function useFormat(): Format {
  const about = useRead('collection.get', {})
  const { locale, massUnits } = about.data?.settings ?? UNTIL_TOLD
  const { locale: told, direction } = useTexts()
  return formatOf({ locale, massUnits }, told, direction)
}

/** The formats of every manner so far: to make one takes as long as to draw some rows. */
const made = new Map<string, Format>()

function formatOf(manner: Manner, told: string, direction: 'ltr' | 'rtl'): Format {
  const name = `${manner.locale} ${manner.massUnits} ${told}`
  const format = made.get(name) ?? createFormat(manner, told, direction)
  made.set(name, format)
  return format
}
