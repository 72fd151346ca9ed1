import amounts from './amounts.json' with { type: 'json' }

export const es = { ...amounts }
