import { SignOut } from './sign-out.tsx'
import { Devices } from './devices.tsx'
import { OwnPassphrase } from './own-passphrase.tsx'
import { People } from './people.tsx'
import type { Who } from './api.ts'
import '../style/sign-in.css'

/** The part of the settings about who comes in; nothing where nobody has to sign in. */
export const WhoSettings = ({ who }: { readonly who: Who }) =>
  who.needed ? (
    <>
      <SignOut who={who} />
      <OwnPassphrase />
      {who.role === 'keeper' ? (
        <>
          <Devices />
          <People />
        </>
      ) : null}
    </>
  ) : null
