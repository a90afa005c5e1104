import { Button } from 'react-aria-components/Button'
import { advertHistory } from '../../bench/adverts/advert-history.ts'
import type { BenchId } from '../../bench/contract.ts'
import { History } from '../parts/history.tsx'
import { say } from '../parts/live.tsx'
import { Problems } from '../parts/problems.tsx'
import { Link } from '../router.tsx'
import { writeAdvert, type AdvertDocument } from './api.ts'
import { useSending } from './use-sending.ts'

type Props = { readonly bench: BenchId; readonly document: AdvertDocument }

/** What was written of an advert. Passed by in a slip, it is open again once that is struck out. */
export const AdvertHistory = ({ bench, document }: Props) => {
  const { id, version } = document.state
  const { problems, busy, run } = useSending()
  const strikeOut = async (note: string, text: string): Promise<void> => {
    if (await run(() => writeAdvert(id, version, { kind: 'struck', note }))) say(`Struck out: ${text}`)
  }
  return (
    <>
      <History
        lines={advertHistory(document)}
        machineLink={(machine) => (
          <Link to={{ kind: 'machine', bench, id: machine }} className="on-its-own">
            the machine
          </Link>
        )}
        strike={(note, text) =>
          bench === 'own' ? (
            <Button
              className="plain"
              isDisabled={busy}
              aria-label={`Strike out: ${text}`}
              onPress={() => void strikeOut(note, text)}
            >
              Strike out
            </Button>
          ) : null
        }
      />
      <Problems problems={problems} />
    </>
  )
}
