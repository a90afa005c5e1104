import type { BenchId } from '../../bench/contract.ts'
import { useSheet } from '../machine/sheet.ts'
import { Link } from '../router.tsx'
import { HowCompared } from './compared.tsx'
import { useCompared } from './use-adverts.ts'
import '../style/buy.css'

/** The way back to the advert that a machine came from, and once it has left how the guess compared. */
export const FromAdvert = ({ bench, advert }: { readonly bench: BenchId; readonly advert: string }) => {
  const { blueprint } = useSheet()
  const { data } = useCompared(bench)
  const compared = data?.each.find((one) => one.advert === advert)
  return (
    <div className="buy-from">
      <Link to={{ kind: 'advert', bench, id: advert }} className="on-its-own">
        The advert it came from
      </Link>
      {compared === undefined ? null : <HowCompared compared={compared} blueprint={blueprint} />}
    </div>
  )
}
