import amounts from './amounts.json' with { type: 'json' }
import collection from './collection.json' with { type: 'json' }
import problems from './problems.json' with { type: 'json' }

export const es = { ...amounts, ...collection, ...problems }
