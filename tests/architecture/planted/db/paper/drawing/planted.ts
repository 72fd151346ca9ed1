export * from '../planted.ts'
