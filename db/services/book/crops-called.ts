import { CropNames } from '../../domain/crops/crop-names.ts'
import { everydayNames, readCropTable } from '../../migrations/crop-table.ts'

let shipped: CropNames<ReturnType<typeof shippedCrops>[number]> | null = null

/** A typed text, then the names in the book of the crops of the table that people call so: for 'zucchini' that of the squash. */
export function textAndCropsCalled(text: string): readonly string[] {
  shipped ??= new CropNames(shippedCrops())
  return [text, ...shipped.called(text).map(({ commonName }) => commonName)]
}

function shippedCrops() {
  return readCropTable().map(({ id, commonName, species }) => ({ commonName, species, ...everydayNames(id) }))
}
