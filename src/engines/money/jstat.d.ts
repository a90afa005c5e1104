/** The functions of jstat in use here. */
declare module 'jstat' {
  type Distribution = {
    /** Density at x. */
    pdf(x: number, ...parameters: readonly number[]): number
    /** Probability of at most x. */
    cdf(x: number, ...parameters: readonly number[]): number
    /** The x below which the share p falls. */
    inv(p: number, ...parameters: readonly number[]): number
  }
  const jStat: { readonly normal: Distribution; readonly studentt: Distribution; readonly lognormal: Distribution }
  export default jStat
}
