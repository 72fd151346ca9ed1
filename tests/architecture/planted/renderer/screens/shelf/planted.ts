export const shelf = 1
