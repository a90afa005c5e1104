import type { ReactNode } from 'react'
import { coreColourRule } from '../../facts/core-colours.ts'
import { wiring } from '../../facts/wiring.ts'
import { CoreColours } from './drawn-cores.tsx'
import { DrawnPlug, plugWords } from './drawn-plug.tsx'
import { useProofSheet } from './proof-sheet.ts'

/** What to look for when looking a machine over: six drawings, each with its words. */
export const LookDrawings = () => {
  const { document, proof } = useProofSheet()
  const { region } = proof.rules
  const { protectionClass } = document.state.plate
  return (
    <div className="look-drawings">
      <Drawn
        name="Sheath cut, and bent flat where it enters the machine"
        words="Sheath at the entry: no cut that shows a core, no sharp bend that stays."
      >
        <SheathAtEntry />
      </Drawn>
      <Drawn
        name="Above, the cord grip holds the sheath; below, it holds bare cores"
        words="Cord grip: on the sheath (above), never on the cores (below)."
      >
        <CordGrip />
      </Drawn>
      <Drawn name={plugWords(region, protectionClass).name} words={plugWords(region, protectionClass).words}>
        <DrawnPlug region={region} protectionClass={protectionClass} />
      </Drawn>
      <Drawn
        name="Casing with a crack and a hole, a finger reaching in towards a live part"
        words="Casing: no crack, no hole a finger gets in through."
      >
        <CrackedCasing />
      </Drawn>
      <Drawn
        name="Screw terminal with one strand of the core outside it"
        words="Terminals: every strand under the screw, none astray."
      >
        <LooseStrand />
      </Drawn>
      <Drawn
        name={`Cord with its cores: ${coresText(region, protectionClass)}`}
        words={coresSentence(region, protectionClass)}
      >
        <CoreColours region={region} protectionClass={protectionClass} />
      </Drawn>
    </div>
  )
}

type Region = keyof typeof wiring

/** `line brown, neutral blue`: the first of the colours where a flat twin has another mark. */
const coresText = (region: Region, protectionClass: 'I' | 'II'): string => {
  const { line, neutral, earth } = wiring[region]
  return [line, neutral, ...(protectionClass === 'I' ? [earth] : [])]
    .map(({ is, colour }) => `${is} ${colour.split(',')[0] ?? colour}`)
    .join(', ')
}

const coresSentence = (region: Region, protectionClass: 'I' | 'II'): string =>
  `Colours: ${coresText(region, protectionClass)} (${coreColourRule[region].name}).`

type DrawnProps = { readonly name: string; readonly words: string; readonly children: ReactNode }

const Drawn = ({ name, words, children }: DrawnProps) => (
  <figure>
    <svg viewBox="0 0 120 84" role="img" aria-label={name}>
      {children}
    </svg>
    <figcaption>{words}</figcaption>
  </figure>
)

const SheathAtEntry = () => (
  <>
    <path d="M14 6V78M14 32H34V52H14" />
    <path d="M34 36H44L48 42L52 36H62C80 36 88 46 90 60L92 80" />
    <path d="M34 48H56C66 48 72 50 74 60L77 80" />
    <path d="M45 41H51M44 44H52" className="core" />
    <circle cx="48" cy="40" r="9" className="wrong" />
    <circle cx="79" cy="48" r="13" className="wrong" />
  </>
)

const CordGrip = () => (
  <>
    <path d="M6 14H66V28H6M66 18H92M66 24H92" />
    <path d="M36 6H50V14H36ZM36 28H50V36H36Z" className="solid" />
    <path d="M100 22L104 27L113 14" className="right" />
    <path d="M6 54H24V70H6M24 59H92M24 65H92" />
    <path d="M36 51H50V59H36ZM36 65H50V73H36Z" className="solid" />
    <circle cx="43" cy="62" r="14" className="wrong" />
    <path d="M101 56L112 68M112 56L101 68" className="wrong-mark" />
  </>
)

const CrackedCasing = () => (
  <>
    <rect x="40" y="6" width="74" height="72" rx="8" />
    <path d="M92 6L86 18L94 26L84 38L90 46" className="crack" />
    <path d="M40 46V62" className="gap" />
    <rect x="72" y="48" width="26" height="14" className="solid" />
    <path d="M4 48H52C60 48 60 60 52 60H4M50 51V57" />
    <circle cx="41" cy="54" r="13" className="wrong" />
  </>
)

const LooseStrand = () => (
  <>
    <path d="M4 36H34V52H4M34 38C46 38 56 42 66 42M34 42C46 42 56 44 66 44M34 46C46 46 56 45 66 46M34 50C46 50 56 48 66 48" />
    <circle cx="84" cy="45" r="20" />
    <path d="M72 51L96 39" />
    <path d="M34 40C46 36 54 26 66 12" className="crack" />
    <circle cx="62" cy="19" r="12" className="wrong" />
  </>
)
