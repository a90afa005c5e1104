import type { Page } from 'playwright-core'
import { blueprintEntry } from '../../src/blueprint/entry.ts'
import type { Blueprint } from '../../src/blueprint/schema.ts'

/** Has the page get these blueprints from the bench instead of those that it knows. Gives the ids fetched whole, as they come. */
export const withBlueprints = async (page: Page, blueprints: readonly Blueprint[]): Promise<readonly string[]> => {
  const fetched: string[] = []
  await page.route('**/api/blueprints', (route) =>
    route.fulfill({ json: { blueprints: blueprints.map(blueprintEntry) } }),
  )
  await page.route('**/api/blueprints/*', async (route) => {
    const id = decodeURIComponent(new URL(route.request().url()).pathname.split('/').at(-1) ?? '')
    fetched.push(id)
    const blueprint = blueprints.find((one) => one.id === id)
    return blueprint === undefined ? route.continue() : route.fulfill({ json: blueprint })
  })
  return fetched
}
