export const shell = 1
