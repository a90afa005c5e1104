/** Steps that the blueprints count among the covers and that carry a part out with them: by the cover’s id, the part’s. Judgement, after the order of the blueprints. */
export const liftedOutWith: Readonly<Record<string, string>> = {
  'motor-end': 'suction-motor',
  'reel-cover': 'cord-reel',
  'sole-plate': 'sole-plate',
}
