import { useTexts } from '../format/use-texts.ts'
import type { CropFound } from './crop-letters.ts'

interface CropDetailProps {
  readonly crop: CropFound
  /** The name it was found by; '' where its own names tell. */
  readonly foundBy: string
}

/** What tells a crop apart in a list. */
export function CropDetail({ crop, foundBy }: CropDetailProps) {
  const { t } = useTexts()
  const parts = [foundBy, crop.species, crop.own ? t('table.own-crop') : '']
  return parts.filter((words) => words !== '').join(' · ')
}
