import type { Locator } from 'playwright-core'

/** What a field says is wrong with it: the text that it names as describing it, when it is marked as invalid. */
export const saidBeside = async (field: Locator): Promise<string> => {
  await field.and(field.page().locator('[aria-invalid=true]')).waitFor()
  return field.evaluate((input) =>
    (input.getAttribute('aria-describedby') ?? '')
      .split(' ')
      .map((id) => document.getElementById(id)?.innerText ?? '')
      .join(' '),
  )
}
