import type { Role } from '../../facts/roles.ts'

/** Who may ask: anyone; anyone signed in; only the keeper of the books. */
export type Allowed = 'anyone' | 'bench' | 'keeper'

/**
 * Every address of the API and who may ask it. One that is not named here is refused. The lesser role works at the bench: machines, shelf,
 * adverts, prices, proofs, photographs. The keeper alone sees the books, spending and what came in from files of the past, and changes
 * settings, people and devices. What holds for the whole bench can be read by both, since the worth of an hour and the cost of materials
 * stand in every figure of a machine's page.
 */
export const permissions: Readonly<Record<string, Allowed>> = {
  'get /healthz': 'anyone',
  'get /api/sign-in': 'anyone',
  'post /api/sign-in': 'anyone',
  'post /api/sign-out': 'anyone',

  'get /api/who': 'bench',
  'post /api/who/passphrase': 'bench',
  'get /api/openapi.json': 'bench',
  'get /api/schemas/{name}': 'bench',
  'get /api/settings': 'bench',

  'get /api/blueprints': 'bench',
  'post /api/blueprints': 'bench',
  'get /api/blueprints/{id}': 'bench',
  'post /api/blueprints/{id}/adapt': 'bench',
  'get /api/blueprints/{id}/file': 'bench',
  'get /api/blueprints/{id}/origin': 'bench',
  'get /api/blueprints/{id}/rig': 'bench',
  'get /api/blueprints/{id}/rig/template.svg': 'bench',

  'get /api/bench/{bench}/changes': 'bench',
  'get /api/bench/{bench}/machines': 'bench',
  'post /api/bench/{bench}/machines': 'bench',
  'get /api/bench/{bench}/machines/{id}': 'bench',
  'post /api/bench/{bench}/machines/{id}/notes': 'bench',
  'post /api/bench/{bench}/machines/{id}/take-off': 'bench',
  'get /api/bench/{bench}/machines/{id}/view': 'bench',
  'get /api/bench/{bench}/machines/{id}/asking': 'bench',
  'get /api/bench/{bench}/machines/{id}/record.pdf': 'bench',
  'get /api/bench/{bench}/machines/{id}/label.pdf': 'bench',
  'get /api/bench/{bench}/machines/{id}/story.html': 'bench',
  'get /api/bench/{bench}/machines/{id}/chapters.txt': 'bench',
  'get /api/bench/{bench}/machines/{id}/sale-sheet': 'bench',
  'get /api/bench/{bench}/machines/{id}/sale-sheet.pdf': 'bench',
  'get /api/bench/{bench}/machines/{id}/sale-sheet.html': 'bench',
  'get /api/bench/{bench}/machines/{id}/sale-sheet.txt': 'bench',
  'get /api/photos/{id}': 'bench',
  'post /api/photos': 'bench',

  'get /api/bench/{bench}/shelf': 'bench',
  'post /api/bench/{bench}/shelf': 'bench',
  'get /api/bench/{bench}/shelf/{id}': 'bench',
  'post /api/bench/{bench}/shelf/{id}/entries': 'bench',
  'get /api/bench/{bench}/adverts': 'bench',
  'post /api/bench/{bench}/adverts': 'bench',
  'get /api/bench/{bench}/adverts/{id}': 'bench',
  'post /api/bench/{bench}/adverts/{id}/entries': 'bench',
  'post /api/bench/{bench}/adverts/{id}/buy': 'bench',
  'get /api/bench/{bench}/compared': 'bench',
  'get /api/bench/{bench}/market': 'bench',
  'get /api/bench/{bench}/prices': 'bench',
  'post /api/bench/{bench}/prices': 'bench',
  'get /api/bench/{bench}/prices/{id}': 'bench',
  'post /api/bench/{bench}/prices/{id}/entries': 'bench',
  'get /api/bench/{bench}/records': 'bench',
  'post /api/bench/{bench}/records': 'bench',
  'get /api/bench/{bench}/records/{id}': 'bench',
  'post /api/bench/{bench}/records/{id}/entries': 'bench',
  'get /api/bench/{bench}/open-data.csv': 'bench',

  'get /api/bench/{bench}/books': 'keeper',
  'get /api/bench/{bench}/books/lines/{month}': 'keeper',
  'get /api/bench/{bench}/books/{file}': 'keeper',
  'post /api/bench/{bench}/books/import': 'keeper',
  'post /api/bench/{bench}/open-data/import': 'keeper',
  'get /api/bench/{bench}/expenses': 'keeper',
  'post /api/bench/{bench}/expenses': 'keeper',
  'get /api/bench/{bench}/expenses/{id}': 'keeper',
  'post /api/bench/{bench}/expenses/{id}/entries': 'keeper',
  'patch /api/settings': 'keeper',
  'get /api/people': 'keeper',
  'post /api/people': 'keeper',
  'post /api/people/{id}/role': 'keeper',
  'post /api/people/{id}/remove': 'keeper',
  'post /api/people/{id}/passphrase': 'keeper',
  'get /api/devices': 'keeper',
  'post /api/devices/{id}/shut-out': 'keeper',
}

type Pattern = { readonly method: string; readonly parts: readonly string[]; readonly allowed: Allowed }

const patterns: readonly Pattern[] = Object.entries(permissions).map(([address, allowed]) => {
  const [method = '', path = ''] = address.split(' ')
  return { method, parts: path.split('/'), allowed }
})

/** Who may ask this; null for an address that is not named. A word in the address goes before a name that stands for any. */
export const allowedTo = (method: string, path: string): Allowed | null => {
  const asked = method.toLowerCase() === 'head' ? 'get' : method.toLowerCase()
  const parts = path.split('/')
  const fitting = patterns.filter((one) => one.method === asked && fits(one.parts, parts))
  const best = fitting.toSorted((a, b) => names(a.parts) - names(b.parts))[0]
  return best?.allowed ?? null
}

const isName = (part: string): boolean => part.startsWith('{')
const names = (parts: readonly string[]): number => parts.filter(isName).length
const fits = (pattern: readonly string[], parts: readonly string[]): boolean =>
  pattern.length === parts.length && pattern.every((one, at) => (isName(one) ? parts[at] !== '' : one === parts[at]))

/** Whether a role may do what is allowed so far. */
export const mayDo = (role: Role, allowed: Allowed): boolean => allowed !== 'keeper' || role === 'keeper'
