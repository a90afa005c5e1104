import type { PeopleStore } from '../bench/people/people-ports.ts'

/** Names of people by id. */
export type Names = ReadonlyMap<string, string>

/** The names of all who ever had one, those who left too: what they wrote keeps their name. */
export const namesIn = async ({ people }: Pick<PeopleStore, 'people'>): Promise<Names> =>
  new Map((await people()).map(({ id, name }) => [id, name]))

/** ` by Ada`; empty where nobody had a name when it was written, or this one is not known here. */
export const byText = (by: string | undefined, names: Names): string => {
  const name = by === undefined ? undefined : names.get(by)
  return name === undefined ? '' : ` by ${name}`
}
