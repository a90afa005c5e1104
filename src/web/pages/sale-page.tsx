import type { BenchId } from '../../bench/contract.ts'
import type { SaleSheetView } from '../../bench/sale/sheet-view.ts'
import { Fold } from '../parts/fold.tsx'
import { Loading } from '../parts/loading.tsx'
import { photoAddress } from '../photos/send-photo.ts'
import { useMachine } from '../queries.ts'
import { Link, PageTitle } from '../router.tsx'
import { SheetSectionPart } from '../sale/sheet-section.tsx'
import { TakeAway } from '../sale/take-away.tsx'
import { useSaleSheet, wordsOnTheWay } from '../sale/use-sale-sheet.ts'
import '../style/photos.css'
import '../style/sale.css'

/** The sale sheet of a machine: what the notes say of it, edited in place, each claim held against them. */
export const SalePage = ({ bench, id }: { readonly bench: BenchId; readonly id: string }) => {
  const { data: document, error } = useMachine(bench, id)
  const { data: view, error: sheetError } = useSaleSheet(bench, document)
  const title = document === undefined ? 'Sale sheet' : `${document.state.name}: sale sheet`
  return (
    <div className="sheet">
      <PageTitle windowTitle={title}>{title}</PageTitle>
      <Link to={{ kind: 'machine', bench, id }} className="on-its-own">
        Back to the machine
      </Link>
      {document === undefined || view === undefined ? (
        <Loading what="its sale sheet" error={error ?? sheetError} />
      ) : (
        <>
          <TakeAway bench={bench} machine={id} view={view} />
          <Price bench={bench} id={id} view={view} />
          {view.sections.map((one) => (
            <SheetSectionPart
              key={one.section}
              bench={bench}
              machine={id}
              view={one}
              onTheWay={wordsOnTheWay(document, view, one.section)}
              canEdit={document.state.left === null}
            />
          ))}
          <Condition view={view} />
          <Photos bench={bench} id={id} view={view} />
        </>
      )}
    </div>
  )
}

type PartProps = { readonly bench: BenchId; readonly id: string; readonly view: SaleSheetView }

const Price = ({ bench, id, view: { price } }: PartProps) => (
  <section className="panel" aria-label="Price">
    <h2>Price</h2>
    {price === null ? (
      <p>No price can be said yet.</p>
    ) : (
      <>
        <p className="sale-price figure">{price.text}</p>
        <p>{price.means}</p>
        <p className="quiet">{price.from === 'listed' ? 'As it is offered.' : 'Reckoned; it is not offered yet.'}</p>
        <Fold title="Why this price">
          <ul className="claims">
            {price.grounds.map((ground) => (
              <li key={ground}>{ground}</li>
            ))}
          </ul>
        </Fold>
      </>
    )}
    <Link to={{ kind: 'asking', bench, id }} className="on-its-own">
      What to ask
    </Link>
  </section>
)

const Condition = ({ view: { condition } }: { readonly view: SaleSheetView }) =>
  condition.length === 0 ? null : (
    <section className="panel" aria-label="Looks, part by part">
      <h2>Looks, part by part</h2>
      <ul className="claims">
        {condition.map(({ part, name, grade, looks, when, text }) => (
          <li key={part}>
            {name}: <b>{grade}</b>, {looks}
            {when === 'before' ? ' (before any cleaning)' : ''}
            {text === '' ? '' : `; ${text}`}
          </li>
        ))}
      </ul>
    </section>
  )

const Photos = ({ bench, id, view: { photos } }: PartProps) => (
  <section className="panel" aria-label="Photographs">
    <h2>Photographs</h2>
    {photos.length === 0 ? <p>None yet.</p> : null}
    <ul className="photos">
      {photos.map(({ photo, alt }) => (
        <li key={photo}>
          <figure>
            <img src={photoAddress(photo, 'small')} alt={alt} loading="lazy" />
            <figcaption>{alt}</figcaption>
          </figure>
        </li>
      ))}
    </ul>
    <Link to={{ kind: 'photos', bench, id }} className="on-its-own">
      Take and order them
    </Link>
  </section>
)
