import type { BlueprintFragment } from '../../fragment.ts'

export interface FeedWiresOptions {
  readonly lineFrom: string
  readonly neutralFrom: string
}

/** Short wires from switch and flex to the connectors in the body, where no loom runs through a handle. */
export const feedWires = ({ lineFrom, neutralFrom }: FeedWiresOptions): BlueprintFragment => ({
  circuit: [
    {
      kind: 'wire',
      id: 'feed-line',
      part: 'body-wires',
      from: lineFrom,
      to: 'body.line',
      lengthM: 0.25,
      areaMm2: 0.75,
    },
    {
      kind: 'wire',
      id: 'feed-neutral',
      part: 'body-wires',
      from: neutralFrom,
      to: 'body.neutral',
      lengthM: 0.25,
      areaMm2: 0.75,
    },
  ],
})
