import type { ApplianceClass, Region } from '../../facts/regions.ts'

type CoresProps = { readonly region: Region; readonly protectionClass: ApplianceClass }

/** The cores of a cord in the colours of the region, with the letters of their terminals. */
export const CoreColours = ({ region, protectionClass }: CoresProps) => {
  const isAmerican = region === 'US' || region === 'CA'
  const colours = isAmerican ? american : harmonised
  return (
    <>
      <path d="M4 32H36V52H4" />
      <Core d="M36 36C56 36 60 16 92 16" colour={colours.line} letter="L" y={16} />
      <Core d="M36 42H92" colour={colours.neutral} letter="N" y={42} />
      {protectionClass === 'I' ? (
        <Core d="M36 48C56 48 60 68 92 68" colour={colours.earth} letter={isAmerican ? 'G' : 'E'} y={68} />
      ) : null}
    </>
  )
}

const harmonised = { line: 'brown', neutral: 'blue', earth: 'green-and-yellow' } as const
const american = { line: 'black', neutral: 'white', earth: 'green' } as const

type CoreProps = { readonly d: string; readonly colour: string; readonly letter: string; readonly y: number }

/** A core has an edge of ink, so that black and white ones are seen on either paper. */
const Core = ({ d, colour, letter, y }: CoreProps) => (
  <>
    <path d={d} className="core-edge" />
    <path d={d} className={`core-of ${colour}`} />
    {colour === 'green-and-yellow' ? <path d={d} className="core-of yellow-part" /> : null}
    <text x="100" y={y + 4}>
      {letter}
    </text>
  </>
)
