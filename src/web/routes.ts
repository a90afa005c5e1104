import type { BenchId } from '../bench/contract.ts'

/** Which page an address means. */
export type Route =
  | { readonly kind: 'bench'; readonly bench: BenchId }
  | { readonly kind: 'add' }
  | { readonly kind: 'practice' }
  | { readonly kind: 'machine'; readonly bench: BenchId; readonly id: string }
  | { readonly kind: 'lost'; readonly path: string }

/** The page for a path such as `/demo/machine/abc`. A path that is none of the pages gives `lost`. */
export const routeOf = (path: string): Route => {
  const parts = path.split('/').filter((part) => part !== '')
  const bench: BenchId = parts[0] === 'demo' ? 'demo' : 'own'
  const [page, id, ...more] = bench === 'demo' ? parts.slice(1) : parts
  if (more.length > 0) return { kind: 'lost', path }
  if (page === undefined) return { kind: 'bench', bench }
  if (page === 'machine' && id !== undefined) return machineRoute(bench, id, path)
  if (bench === 'own' && id === undefined && (page === 'add' || page === 'practice')) return { kind: page }
  return { kind: 'lost', path }
}

const machineRoute = (bench: BenchId, id: string, path: string): Route => {
  try {
    return { kind: 'machine', bench, id: decodeURIComponent(id) }
  } catch {
    return { kind: 'lost', path }
  }
}

/** The address of a page: the inverse of `routeOf`. */
export const pathOf = (route: Route): string => {
  switch (route.kind) {
    case 'bench':
      return route.bench === 'demo' ? '/demo' : '/'
    case 'add':
      return '/add'
    case 'practice':
      return '/practice'
    case 'machine':
      return `${route.bench === 'demo' ? '/demo' : ''}/machine/${encodeURIComponent(route.id)}`
    case 'lost':
      return route.path
  }
}
