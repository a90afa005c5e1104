/** The id under which a look-up in the recall list is noted; it is none of the checks after repair. */
export const recallCheckId = 'recall' as const

export const recallCheckTitle = 'Recall check'

/** How it is made. What is common to recalls of corded machines is judged by eye even where no list has it. */
export const recallHow: readonly string[] = Object.freeze([
  'Take make, model and serial number from the plate.',
  'Look them up, and the dates of make that a notice names.',
  'Look again on the day it is listed for sale: recalls come late.',
])
