export const attic = 'above'
