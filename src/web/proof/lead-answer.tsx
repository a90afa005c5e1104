import { Fragment, type ReactNode } from 'react'
import { sourceText } from '../../base/source-text.ts'
import type { Source } from '../../base/source.ts'
import type { LeadChoice } from '../../engines/limits/index.ts'
import { Fold } from '../parts/fold.tsx'
import { sentence } from '../words.ts'

/** The lead that a machine needs; each line opens to what it rests on. */
export const LeadAnswer = ({ lead }: { readonly lead: LeadChoice }) => {
  const { conductor, cords, cores, plug, fuse, fuseSource, conductors, conductorSources, drop, remarks } = lead
  return (
    <div className="lead-answer" role="group" aria-label="The lead it needs">
      <Line name="Each conductor" value={sizeText(conductor.size)} sources={conductor.sources}>
        <p>Or thicker. Rated current {lead.rated.currentA.toFixed(1)} A.</p>
      </Line>
      <Line name="Cord" value={<CordTypes ids={cords.types.map(({ id }) => id)} />} sources={[cords.source]}>
        <ul>
          {cords.types.map(({ id, sheath }) => (
            <li key={id}>
              {id}: {sheath}
            </li>
          ))}
        </ul>
      </Line>
      <Line name="Cores" value={String(cores)} sources={conductorSources} />
      <Line name="Plug" value={plug.name} sources={[plug.source]}>
        <Remarks remarks={plug.remarks} />
      </Line>
      <Line
        name="Fuse in the plug"
        value={fuse === null ? 'none' : `${fuse.ratingA} A, ${fuse.colour}`}
        sources={[fuseSource]}
      />
      {conductors.map(({ is, colour, terminal }) => (
        <Line key={is} name={is} value={`${colour} to ${terminal}`} sources={conductorSources} />
      ))}
      <Line
        name="Voltage drop"
        value={`${drop.dropV.toFixed(1)} V, ${(drop.shareOfMains * 100).toFixed(1)} % of the mains`}
        sources={drop.sources}
      >
        <p>{drop.lostW.toFixed(0)} W warm the lead.</p>
        {drop.tableV === null ? null : <p>By the table of mV per ampere and metre: {drop.tableV.toFixed(1)} V.</p>}
      </Line>
      <Remarks remarks={remarks} />
    </div>
  )
}

const sizeText = (size: string): string => size.replace('mm2', 'mm²')

/** A type of cord is never broken at its hyphen. */
const CordTypes = ({ ids }: { readonly ids: readonly string[] }) =>
  ids.map((id, at) => (
    <Fragment key={id}>
      {at === 0 ? null : ', '}
      <span className="cord-type">{id}</span>
    </Fragment>
  ))

const Remarks = ({ remarks }: { readonly remarks: readonly string[] }) =>
  remarks.map((remark) => (
    <p key={remark} className="quiet">
      {sentence(remark)}
    </p>
  ))

type LineProps = {
  readonly name: string
  readonly value: ReactNode
  readonly sources: readonly Source[]
  readonly children?: ReactNode
}

const Line = ({ name, value, sources, children }: LineProps) => (
  <Fold
    title={
      <span className="lead-line">
        <span className="quiet">{name}</span> <strong>{value}</strong>
      </span>
    }
  >
    {children}
    <ul>
      {[...new Set(sources.map(sourceText))].map((source) => (
        <li key={source}>{source}</li>
      ))}
    </ul>
  </Fold>
)
