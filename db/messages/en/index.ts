import amounts from './amounts.json' with { type: 'json' }

/** The English catalogue: whole, and what every other language is held against. */
export const en = { ...amounts }
