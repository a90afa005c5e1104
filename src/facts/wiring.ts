import type { Source } from '../base/source.ts'
import type { Region } from './regions.ts'

/** One conductor of a cord: what it is called, its colour, where it goes in the plug and in the machine. */
export type Conductor = { readonly is: string; readonly colour: string; readonly terminal: string }

export type Wiring = {
  readonly line: Conductor
  readonly neutral: Conductor
  readonly earth: Conductor
  /** Colours of former times: what carries them may not be sold again so. */
  readonly old: string
  readonly source: Source
  readonly terminalSource: Source
}

const harmonised: Wiring = {
  line: { is: 'line', colour: 'brown', terminal: 'L, and in the machine the switch' },
  neutral: { is: 'neutral', colour: 'blue', terminal: 'N' },
  earth: { is: 'protective earth', colour: 'green and yellow', terminal: 'E or ⏚' },
  old: 'red, black and green',
  source: {
    title: 'Harmonised colours of flexible cords',
    url: 'https://go.interpower.com/conductor-color-coding-chart-lp',
    evidence: 'retrieved',
  },
  terminalSource: {
    title: 'Single-pole switches and fuses only in the line conductor',
    url: 'https://zdroje.elektrika.cz/book/basic-electrical-installation-work/page/367',
    evidence: 'retrieved',
  },
}

const american: Wiring = {
  line: {
    is: 'line',
    colour: 'black, or the smooth side of a flat twin',
    terminal: 'brass screw, narrow blade, and in the machine the switch',
  },
  neutral: {
    is: 'neutral',
    colour: 'white, or the ribbed side of a flat twin',
    terminal: 'silver screw, wide blade',
  },
  earth: { is: 'equipment ground', colour: 'green', terminal: 'green screw, round pin' },
  old: 'brown and blue',
  source: {
    title: 'American colours of flexible cords; ribbed side is neutral, to the wide blade',
    url: 'https://www.hunker.com/13401222/flat-power-cord-hot-vs-neutral',
    evidence: 'retrieved',
  },
  terminalSource: {
    title: 'Brass is hot, silver is neutral, green is ground',
    url: 'http://www.regiscoyne.com/tech/pwrcordcc/',
    evidence: 'retrieved',
  },
}

export const wiring: Readonly<Record<Region, Wiring>> = {
  UK: harmonised,
  EU: harmonised,
  AU: harmonised,
  NZ: harmonised,
  US: american,
  CA: american,
}
