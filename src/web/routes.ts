import type { BenchId } from '../bench/contract.ts'

/** Which page an address means. */
export type Route =
  | { readonly kind: 'bench'; readonly bench: BenchId }
  | { readonly kind: 'add' }
  | { readonly kind: 'buy' }
  | { readonly kind: 'advert'; readonly bench: BenchId; readonly id: string }
  | { readonly kind: 'practice' }
  | { readonly kind: 'settings' }
  | { readonly kind: 'blueprints' }
  | { readonly kind: 'blueprint'; readonly id: string }
  | { readonly kind: 'machine'; readonly bench: BenchId; readonly id: string }
  | { readonly kind: 'air'; readonly bench: BenchId; readonly id: string }
  | { readonly kind: 'proof'; readonly bench: BenchId; readonly id: string }
  | { readonly kind: 'asking'; readonly bench: BenchId; readonly id: string }
  | { readonly kind: 'photos'; readonly bench: BenchId; readonly id: string }
  | { readonly kind: 'sale'; readonly bench: BenchId; readonly id: string }
  | { readonly kind: 'functions'; readonly bench: BenchId; readonly id: string }
  | { readonly kind: 'strip'; readonly bench: BenchId; readonly id: string }
  | { readonly kind: 'clean'; readonly bench: BenchId; readonly id: string }
  | { readonly kind: 'story'; readonly bench: BenchId; readonly id: string }
  | { readonly kind: 'books'; readonly bench: BenchId }
  | { readonly kind: 'shelf'; readonly bench: BenchId }
  | { readonly kind: 'part'; readonly bench: BenchId; readonly id: string }
  | { readonly kind: 'lost'; readonly path: string }

/** Pages about one machine beside its own. */
const furtherPages = ['air', 'proof', 'asking', 'photos', 'sale', 'functions', 'strip', 'clean', 'story'] as const

/** The page for a path such as `/demo/machine/abc` or `/machine/abc/air`. A path that is none of the pages gives `lost`. */
export const routeOf = (path: string): Route => {
  const parts = path.split('/').filter((part) => part !== '')
  const bench: BenchId = parts[0] === 'demo' ? 'demo' : 'own'
  const [page, id, ...more] = bench === 'demo' ? parts.slice(1) : parts
  const further = furtherPages.find((kind) => more.join('/') === kind)
  if (page === 'machine' && id !== undefined && further !== undefined)
    return withId(id, path, (known) => ({ kind: further, bench, id: known }))
  if (more.length > 0) return { kind: 'lost', path }
  if (page === undefined) return { kind: 'bench', bench }
  if (page === 'books' && id === undefined) return { kind: 'books', bench }
  if (page === 'shelf')
    return id === undefined
      ? { kind: 'shelf', bench }
      : withId(id, path, (known) => ({ kind: 'part', bench, id: known }))
  if (page === 'machine' && id !== undefined)
    return withId(id, path, (known) => ({ kind: 'machine', bench, id: known }))
  if (page === 'adverts' && id !== undefined) return withId(id, path, (known) => ({ kind: 'advert', bench, id: known }))
  return bench === 'own' ? ownRoute(page, id, path) : { kind: 'lost', path }
}

const ownRoute = (page: string, id: string | undefined, path: string): Route => {
  if (page === 'blueprints' && id !== undefined) return withId(id, path, (known) => ({ kind: 'blueprint', id: known }))
  if (
    id === undefined &&
    (page === 'add' || page === 'buy' || page === 'practice' || page === 'blueprints' || page === 'settings')
  )
    return { kind: page }
  return { kind: 'lost', path }
}

const withId = (id: string, path: string, route: (id: string) => Route): Route => {
  try {
    return route(decodeURIComponent(id))
  } catch {
    return { kind: 'lost', path }
  }
}

/** The address of a page: the inverse of `routeOf`. */
export const pathOf = (route: Route): string => {
  switch (route.kind) {
    case 'bench':
      return route.bench === 'demo' ? '/demo' : '/'
    case 'books':
      return route.bench === 'demo' ? '/demo/books' : '/books'
    case 'add':
      return '/add'
    case 'buy':
      return '/buy'
    case 'advert':
      return `${route.bench === 'demo' ? '/demo' : ''}/adverts/${encodeURIComponent(route.id)}`
    case 'practice':
      return '/practice'
    case 'settings':
      return '/settings'
    case 'blueprints':
      return '/blueprints'
    case 'blueprint':
      return `/blueprints/${encodeURIComponent(route.id)}`
    case 'machine':
      return machinePath(route)
    case 'air':
    case 'proof':
    case 'asking':
    case 'photos':
    case 'sale':
    case 'functions':
    case 'strip':
    case 'clean':
    case 'story':
      return `${machinePath(route)}/${route.kind}`
    case 'shelf':
      return shelfPath(route.bench)
    case 'part':
      return `${shelfPath(route.bench)}/${encodeURIComponent(route.id)}`
    case 'lost':
      return route.path
  }
}

const shelfPath = (bench: BenchId): string => (bench === 'demo' ? '/demo/shelf' : '/shelf')

const machinePath = ({ bench, id }: { readonly bench: BenchId; readonly id: string }): string =>
  `${bench === 'demo' ? '/demo' : ''}/machine/${encodeURIComponent(id)}`
