import { Option } from 'commander'
import type { StorePlace } from '../store/open-bench-store.ts'

/** What a command line says of where the bench is kept. */
export type PlaceOptions = { readonly data: string; readonly database?: string; readonly photos?: string }

export const placeOf = ({ data, database, photos }: PlaceOptions): StorePlace => ({ folder: data, database, photos })

/** Options of the whole program. What stands in the environment is not shown: it may hold a password. */
export const placeOptions = (environment: NodeJS.ProcessEnv): readonly [Option, Option] => [
  new Option('--database <url>', 'PostgreSQL database, postgres://… (or set THRUM_DATABASE)').default(
    environment['THRUM_DATABASE'],
    'as THRUM_DATABASE says',
  ),
  new Option('--photos <where>', 'photographs: database, or a folder (or set THRUM_PHOTOS)').default(
    environment['THRUM_PHOTOS'],
    'as THRUM_PHOTOS says',
  ),
]
