/** How a plan may weigh what it might lose against what it brings on average. Words for the page and the command line. */
export const attitudes = {
  average: {
    name: 'Most money on average',
    means: 'The plan picks what brings most over many machines. Some of them will lose money.',
  },
  cautious: {
    name: 'At most one machine in five may lose money',
    means:
      'The plan leaves out work that is a gamble on this machine. It costs you: less money on average, and now and then a machine sold for spares that could have been mended.',
  },
} as const

export type Attitude = keyof typeof attitudes
export const attitudeIds = Object.keys(attitudes) as [Attitude, ...Attitude[]]

/** What “cautious” means: the largest share of machines that may lose money. A choice of the bench, not a measured figure. */
export const cautiousLossShare = 0.2
