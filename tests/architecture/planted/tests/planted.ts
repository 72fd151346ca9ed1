export const helper = 1
