/** The part of the library that the published checks use; it brings no types of its own. */
declare module 'jstat' {
  export const jStat: {
    readonly ibeta: (x: number, a: number, b: number) => number
    readonly gammaln: (x: number) => number
    readonly beta: {
      readonly inv: (chance: number, a: number, b: number) => number
      readonly cdf: (x: number, a: number, b: number) => number
      readonly mean: (a: number, b: number) => number
      readonly variance: (a: number, b: number) => number
    }
    readonly normal: {
      readonly inv: (chance: number, mean: number, deviation: number) => number
      readonly cdf: (x: number, mean: number, deviation: number) => number
    }
    readonly chisquare: { readonly cdf: (x: number, degrees: number) => number }
    readonly studentt: { readonly inv: (chance: number, degrees: number) => number }
    readonly binomial: { readonly pdf: (hits: number, trials: number, part: number) => number }
  }
}
