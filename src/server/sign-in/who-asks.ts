import { AsyncLocalStorage } from 'node:async_hooks'
import type { SignedIn } from '../../bench/people/sign-in.ts'

const asking = new AsyncLocalStorage<SignedIn | null>()

/** Runs what answers a request as on behalf of whoever asks. */
export const onBehalfOf = <T>(signedIn: SignedIn | null, work: () => T): T => asking.run(signedIn, work)

/** Whose request is being answered; null where no sign-in is needed, or outside a request. */
export const whoAsks = (): SignedIn | null => asking.getStore() ?? null
