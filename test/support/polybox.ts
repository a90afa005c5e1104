export type Polybox = {
  readonly rate: number
  readonly known: Readonly<Record<string, number>>
  readonly components: readonly {
    readonly id: string
    readonly does: 'times' | 'plus'
    readonly in: readonly [string, string]
    readonly out: string
  }[]
  readonly symptoms: Readonly<Record<string, number>>
}

/**
 * Whether these values can hold together when every component outside `faulty` works and a faulty one puts out anything.
 * Carries values forward, and back through adders and multipliers, until nothing new follows.
 */
export const isConsistent = (
  box: Polybox,
  faulty: ReadonlySet<string>,
  values: Readonly<Record<string, number>>,
): boolean => {
  const known = new Map(Object.entries({ ...box.known, ...values }))
  const working = box.components.filter((component) => !faulty.has(component.id))
  let isNew = true
  while (isNew) {
    isNew = false
    for (const component of working) {
      const found = derive(component, known)
      if (found === 'clash') return false
      if (found !== null) {
        known.set(found.at, found.value)
        isNew = true
      }
    }
  }
  return true
}

type Found = { readonly at: string; readonly value: number } | 'clash' | null

const derive = (
  { does, in: inputs, out }: Polybox['components'][number],
  known: ReadonlyMap<string, number>,
): Found => {
  const [left, right] = inputs.map((name) => known.get(name))
  const result = known.get(out)
  if (left !== undefined && right !== undefined) {
    const value = does === 'plus' ? left + right : left * right
    if (result === undefined) return { at: out, value }
    return result === value ? null : 'clash'
  }
  const given = left ?? right
  if (result === undefined || given === undefined) return null
  const at = left === undefined ? inputs[0] : inputs[1]
  return { at, value: does === 'plus' ? result - given : result / given }
}
