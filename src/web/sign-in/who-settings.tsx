import { SignOut } from './sign-out.tsx'
import { Devices } from './devices.tsx'
import { OwnPassphrase } from './own-passphrase.tsx'
import { People } from './people.tsx'
import type { Who } from './api.ts'
import '../style/sign-in.css'

/** The part of the settings about who comes in. Where nobody has to sign in, all there is to do is to give the first person a name. */
export const WhoSettings = ({ who }: { readonly who: Who }) => (
  <>
    {who.needed ? (
      <>
        <SignOut who={who} />
        <OwnPassphrase />
      </>
    ) : null}
    {who.needed && who.role === 'keeper' ? <Devices /> : null}
    {who.role === 'keeper' ? <People /> : null}
  </>
)
