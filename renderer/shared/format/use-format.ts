import { useMemo } from 'react'
import type { Manner } from '../../../db/domain/amounts/in-words.ts'
import { useRead } from '../client/use-read.ts'
import { createFormat, type Format } from './format.ts'

const UNTIL_TOLD: Manner = { locale: 'en-GB', massUnits: 'metric' }

/** The formats of the open collection. */
export function useFormat(): Format {
  const about = useRead('collection.about', {})
  const { locale, massUnits } = about.data?.settings ?? UNTIL_TOLD
  return useMemo(() => createFormat({ locale, massUnits }), [locale, massUnits])
}
