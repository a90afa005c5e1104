/** Scratch arrays of one compiled network. Every call writes all it reads, so nothing is carried from call to call. */
export type OhmsWork = {
  /** For each node: the lowest node that ideal links join it to. */
  readonly merged: Int32Array
  /** For each node: the lowest node that current can reach from it. */
  readonly part: Int32Array
  /** For each node that stands for a part: 1 when a pair is to be measured in it. */
  readonly wanted: Uint8Array
  /** For each node: number of its group among those solved, or −1. */
  readonly slot: Int32Array
  /** Conductances between groups, size × size. */
  readonly perOhm: Float64Array
  /** For each group: how many neighbours it has left, and their list in `neighbour`, size × size. */
  readonly degree: Int32Array
  readonly neighbour: Int32Array
  /** For each group: the step in which it was eliminated. */
  readonly stepOf: Int32Array
  /** For each step: one over the sum of conductances at its group; 0 for the last group of a part. */
  readonly ohm: Float64Array
  /** The factors of step s lie in `factor` from `firstFactor[s]` up to `firstFactor[s + 1]`, with the place of the other node's potential. */
  readonly firstFactor: Int32Array
  readonly factorPlace: Int32Array
  readonly factor: Float64Array
  /** For each step and lane: injected current, later the potential. */
  readonly potential: Float64Array
  /** The elements between two groups: which element, its ends, its conductance. */
  readonly branchElement: Int32Array
  readonly branchFrom: Int32Array
  readonly branchTo: Int32Array
  readonly branchPerOhm: Float64Array
}

/** Scratch for a network of that many nodes and elements, solved for `lanes` pairs at a time. */
export const makeOhmsWork = (nodes: number, elements: number, lanes: number): OhmsWork => ({
  merged: new Int32Array(nodes),
  part: new Int32Array(nodes),
  wanted: new Uint8Array(nodes),
  slot: new Int32Array(nodes),
  perOhm: new Float64Array(nodes * nodes),
  degree: new Int32Array(nodes),
  neighbour: new Int32Array(nodes * nodes),
  stepOf: new Int32Array(nodes),
  ohm: new Float64Array(nodes),
  firstFactor: new Int32Array(nodes + 1),
  factorPlace: new Int32Array(factorsAtMost(nodes)),
  factor: new Float64Array(factorsAtMost(nodes)),
  potential: new Float64Array(lanes * nodes),
  branchElement: new Int32Array(elements),
  branchFrom: new Int32Array(elements),
  branchTo: new Int32Array(elements),
  branchPerOhm: new Float64Array(elements),
})

const factorsAtMost = (nodes: number): number => (nodes * (nodes - 1)) / 2
