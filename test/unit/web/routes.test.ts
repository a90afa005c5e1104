import { describe, expect, it } from 'vitest'
import { pathOf, routeOf, type Route } from '../../../src/web/routes.ts'

const pages: readonly Route[] = [
  { kind: 'bench', bench: 'own' },
  { kind: 'bench', bench: 'demo' },
  { kind: 'add' },
  { kind: 'practice' },
  { kind: 'buy' },
  { kind: 'advert', bench: 'own', id: 'a 1' },
  { kind: 'advert', bench: 'demo', id: 'a' },
  { kind: 'settings' },
  { kind: 'blueprints' },
  { kind: 'blueprint', id: 'bagged-upright' },
  { kind: 'blueprint', id: 'with / and ü?' },
  { kind: 'machine', bench: 'own', id: 'a-1' },
  { kind: 'machine', bench: 'demo', id: 'with / and ü?' },
  { kind: 'clean', bench: 'own', id: 'a-1' },
  { kind: 'air', bench: 'own', id: 'a-1' },
  { kind: 'air', bench: 'demo', id: 'with / and ü?' },
  { kind: 'proof', bench: 'own', id: 'a-1' },
  { kind: 'proof', bench: 'demo', id: 'with / and ü?' },
  { kind: 'asking', bench: 'own', id: 'a-1' },
  { kind: 'strip', bench: 'own', id: 'a-1' },
  { kind: 'strip', bench: 'demo', id: 'with / and ü?' },
  { kind: 'asking', bench: 'demo', id: 'with / and ü?' },
]

describe('routes', () => {
  it.each(pages)('finds each page back from its own address: %o', (route) =>
    expect(routeOf(pathOf(route))).toEqual(route),
  )
  it.each([
    '/machine',
    '/machine/a/b',
    '/machine/a/air/b',
    '/machine/%E0%A4%A/air',
    '/air',
    '/machine/a/proof/b',
    '/machine/%E0%A4%A/proof',
    '/proof',
    '/demo/proof',
    '/demo/add',
    '/demo/settings',
    '/settings/a',
    '/nowhere',
    '/machine/%E0%A4%A',
    '/demo/blueprints',
    '/demo/blueprints/a',
    '/blueprints/a/b',
    '/blueprints/%E0%A4%A',
  ])('says that %s is no page', (path) => expect(routeOf(path)).toEqual({ kind: 'lost', path }))
  it('does not mind a stroke at the end', () => expect(routeOf('/demo/')).toEqual({ kind: 'bench', bench: 'demo' }))
})
