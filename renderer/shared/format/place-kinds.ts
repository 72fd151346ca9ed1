import type { CallInput } from '../../../db/contract/contract.ts'

export type PlaceKind = CallInput<'place.create'>['kind']

export const PLACE_KINDS: readonly { readonly value: PlaceKind; readonly label: string }[] = [
  { value: 'room', label: 'a room' },
  { value: 'cupboard', label: 'a cupboard' },
  { value: 'fridge', label: 'a fridge' },
  { value: 'freezer', label: 'a freezer' },
  { value: 'shelf', label: 'a shelf' },
  { value: 'box', label: 'a box' },
  { value: 'jar', label: 'a jar' },
]
