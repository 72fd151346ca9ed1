import amounts from './amounts.json' with { type: 'json' }
import collection from './collection.json' with { type: 'json' }
import problems from './problems.json' with { type: 'json' }

/** The English catalogue: whole, and what every other language is held against. */
export const en = { ...amounts, ...collection, ...problems }
