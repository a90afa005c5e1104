import type { ApplianceClass, Region } from '../../facts/regions.ts'

type PlugProps = { readonly region: Region; readonly protectionClass: ApplianceClass }

/** What a plug of the region has to show, for those who see the drawing and those who do not. */
export const plugWords = (
  region: Region,
  protectionClass: ApplianceClass,
): { readonly name: string; readonly words: string } => {
  switch (region) {
    case 'UK':
      return {
        name: 'Plug with three flat pins, the lower two in sleeves, and its fuse beside it',
        words: 'Plug: three straight pins, line and neutral sleeved, a whole fuse of the right rating.',
      }
    case 'EU':
      return {
        name: 'Plug with two round pins',
        words: `Plug: two straight round pins${protectionClass === 'I' ? ', earth contacts clean' : ''}, no fuse.`,
      }
    case 'AU':
    case 'NZ':
      return {
        name: 'Plug with slanted flat pins, insulated near the body',
        words: 'Plug: straight slanted pins, insulated near the body, no fuse.',
      }
    case 'US':
    case 'CA':
      return {
        name: 'Plug with two flat blades, one of them wider',
        words: `Plug: two straight blades, the wide one not filed down${protectionClass === 'I' ? ', ground pin there' : ''}.`,
      }
  }
}

/** The face of a plug of the region. */
export const DrawnPlug = ({ region, protectionClass }: PlugProps) => {
  switch (region) {
    case 'UK':
      return <British />
    case 'EU':
      return <Continental hasEarth={protectionClass === 'I'} />
    case 'AU':
    case 'NZ':
      return <Australasian hasEarth={protectionClass === 'I'} />
    case 'US':
    case 'CA':
      return <American hasEarth={protectionClass === 'I'} />
  }
}

const British = () => (
  <>
    <path d="M30 8H54C70 8 76 24 76 44V74H8V44C8 24 14 8 30 8Z" />
    <rect x="38" y="16" width="8" height="16" className="solid" />
    <path d="M14 50H34V60H14ZM50 50H70V60H50Z" />
    <path d="M17 53H31V57H17ZM53 53H67V57H53Z" className="solid" />
    <rect x="90" y="24" width="14" height="38" rx="2" />
    <path d="M90 33H104M90 53H104M97 33V53" />
  </>
)

const Continental = ({ hasEarth }: { readonly hasEarth: boolean }) => (
  <>
    {hasEarth ? <circle cx="60" cy="42" r="34" /> : <path d="M44 22H76A20 20 0 0 1 76 62H44A20 20 0 0 1 44 22Z" />}
    <circle cx="42" cy="42" r="5" className="solid" />
    <circle cx="78" cy="42" r="5" className="solid" />
    {hasEarth ? <path d="M54 8V18H66V8M54 76V66H66V76" /> : null}
  </>
)

const Australasian = ({ hasEarth }: { readonly hasEarth: boolean }) => (
  <>
    <path d="M60 8C84 8 92 24 92 42S84 76 60 76S28 60 28 42S36 8 60 8Z" />
    <path d="M40 38L50 22L55 25L45 41ZM80 38L70 22L65 25L75 41Z" className="solid" />
    {hasEarth ? <path d="M57 52H63V68H57Z" className="solid" /> : null}
  </>
)

const American = ({ hasEarth }: { readonly hasEarth: boolean }) => (
  <>
    <path d="M36 10H84V52C84 66 74 76 60 76S36 66 36 52Z" />
    <path d="M47 24H51V44H47ZM70 22H74V46H70Z" className="solid" />
    {hasEarth ? <circle cx="60" cy="62" r="5" className="solid" /> : null}
  </>
)
