import { elsewhere } from './elsewhere.ts'
import { founding } from './founding.ts'
import { keeping } from './keeping.ts'
import { lots } from './lots.ts'
import { paper } from './paper.ts'
import { recalls } from './recalls.ts'
import { season } from './season.ts'
import { shelf } from './shelf.ts'
import { type Step, tellAfresh } from './step.ts'
import { table } from './table.ts'

/** Every operation once at least, in the order in which a library's first day could bring them. */
export function story(): readonly Step[] {
  tellAfresh()
  return [
    ...founding(),
    ...keeping(),
    ...shelf(),
    ...season(),
    ...table(),
    ...lots(),
    ...elsewhere(),
    ...recalls(),
    ...paper(),
  ]
}
