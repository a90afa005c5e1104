import { benchItself, standing } from '../../bench/people/person.ts'
import type { SignedIn } from '../../bench/people/sign-in.ts'
import type { Access } from './access.ts'
import { needsSignIn } from './gate.ts'

/** Calls `tell` once whoever was let in would not be let in like this any more; gives what ends the watch. */
export type WhenOut = (who: SignedIn | null, tell: () => void) => () => void

/** How often it is looked whether another program, such as the command line, shut somebody out. */
const lookMs = 5000

/** The same access, and word of those it lets in no more: at once where this program shut them out. */
export const watchedAccess = (access: Access): { readonly access: Access; readonly whenOut: WhenOut } => {
  const looks = new Set<() => void>()
  const thenLook =
    <Args extends readonly unknown[], T>(work: (...args: Args) => Promise<T>) =>
    async (...args: Args): Promise<T> => {
      const outcome = await work(...args)
      looks.forEach((look) => look())
      return outcome
    }
  const { people } = access
  const whenOut: WhenOut = (who, tell) => {
    // A store that does not answer this moment shuts nobody out.
    const look = (): void => void isStillIn(access, who).then((is) => (is ? undefined : tell()), () => undefined) // prettier-ignore
    const timer = setInterval(look, lookMs)
    looks.add(look)
    look()
    return () => {
      clearInterval(timer)
      looks.delete(look)
    }
  }
  return {
    whenOut,
    access: {
      ...access,
      people: {
        ...people,
        putPerson: thenLook(people.putPerson),
        removeDevice: thenLook(people.removeDevice),
        removeDevicesOf: thenLook(people.removeDevicesOf),
      },
    },
  }
}

const isStillIn = async (access: Access, who: SignedIn | null): Promise<boolean> => {
  if (who === null) return !(await needsSignIn(access))
  const device = (await access.people.devices()).find(({ id }) => id === who.device)
  if (device === undefined || device.expiresAt <= access.now()) return false
  const all = await access.people.people()
  const there = standing(all)
  if (who.person === null) return there.length === 0 && all.some(({ id }) => id === benchItself)
  return there.some(({ id, role }) => id === who.person?.id && role === who.role)
}
