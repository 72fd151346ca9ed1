import { configureGlobal } from 'fast-check'

// A property is tried on fewer examples, from the same seed each time, so that a fault is caught in every run or in none.
configureGlobal({ numRuns: 25, seed: 20_261_127 })
