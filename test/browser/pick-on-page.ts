import type { Locator, Page } from 'playwright-core'
import { blueprintEntry } from '../../src/blueprint/entry.ts'
import { blueprints as library } from '../../src/blueprint/library.ts'
import type { Blueprint } from '../../src/blueprint/schema.ts'
import { kindsOf } from '../../src/web/blueprints/kinds.ts'
import { settled } from './looks.ts'

type PictureOptions = { readonly blueprints?: readonly Blueprint[]; readonly role?: 'button' | 'link' }

/**
 * What chooses this blueprint on the picture list, one after the other: its picture, and where several look alike its rating
 * plate. Nothing of it is there when it is the only one: then it is chosen.
 */
export const picturesOf = (
  page: Page,
  { id }: Blueprint,
  { blueprints = library, role = 'button' }: PictureOptions = {},
): readonly Locator[] => {
  const kind = kindsOf(blueprints.map(blueprintEntry)).find(({ entries }) => entries.some((one) => one.id === id))!
  const label = kind.labels[kind.entries.findIndex((one) => one.id === id)]
  const list = page.getByRole('list', { name: 'Blueprints' })
  const named = (wanted: 'button' | 'link', pattern: string) => list.getByRole(wanted, { name: new RegExp(pattern) })
  if (kind.entries.length === 1) return [named(role, `^${asRegExp(kind.name)}`)]
  const plate = named(role, `^${asRegExp(`${kind.name}, ${label}`)}$`)
  return [named('button', `^${asRegExp(kind.name)} \\d+ rating plates`), plate]
}

/** Presses what chooses a blueprint, where there is a choice. A kind that is the only one left needs no picture pressed. */
export const pressPictures = async (pictures: readonly Locator[], press: (picture: Locator) => Promise<void>) => {
  for (const picture of pictures) if (await picture.isVisible()) await press(picture)
}

const asRegExp = (text: string): string => text.replace(/[.*+?^${}()|[\]\\]/g, '\\$&')

/** Chooses a blueprint on the page for adding a machine, where there is a choice. */
export const pickOnPage = async (page: Page, blueprint: Blueprint): Promise<void> => {
  await settled(page)
  await pressPictures(picturesOf(page, blueprint), (picture) => picture.click())
}
