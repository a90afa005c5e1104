import { brushShares, wattShares } from '../../../facts/power-meter.ts'
import type { BlueprintFragment, CheckInput } from '../../fragment.ts'
import { wattsBlockedUnder, wattsBrushUnder, wattsOpenUnder } from './watts-under.ts'

export interface WattsOptions {
  /** False where there is no hose whose end a hand could close. */
  readonly hose: boolean
  /** The motor that moves the air, as an element of the circuit. */
  readonly suctionMotor?: string
  /** Positions of the controls for running it with the brush off. */
  readonly runControls?: Readonly<Record<string, string>>
  /** Only where the brush has a motor of its own. */
  readonly brush?: {
    readonly motor?: string
    /** Its share of the plate's power. */
    readonly shareOfPlate: number
    /** Positions of the controls for running it with the brush on. */
    readonly controls?: Readonly<Record<string, string>>
    /** How the brush is set turning and stopped, as “handle back” and “handle up”. */
    readonly on: string
    readonly off: string
  }
}

const common =
  'Covers on, RCD socket of 30 mA or less, power meter between plug and socket, hands clear of all that turns.'
const caution =
  'Hum without turning, smoke or a smell of varnish: off at once. Never hold the brush or the motor to see what it does.'

const openHose = (o: WattsOptions): CheckInput => ({
  kind: 'run',
  id: 'run-watts-open',
  name: o.hose ? 'Watts, hose open' : 'Watts, head lifted',
  how: `${common} ${o.hose ? 'Hose open, brush still' : 'Head lifted clear of the floor'}. Read the watts after twenty seconds. Plug out before touching.`,
  minutes: 1.5,
  caution,
  outcomes: [
    { id: 'sound', name: 'As the plate says' },
    { id: 'low', name: 'Below the plate' },
    { id: 'high', name: 'Above the plate', danger: true },
    { id: 'dead', name: 'Nothing runs' },
  ],
  sound: { sound: 0.9, low: 0.088, high: 0.007, dead: 0.005 },
  under: wattsOpenUnder,
  ...driven(o),
  scale: {
    unit: 'W',
    ofPlate: true,
    order: ['dead', 'low', 'sound', 'high'],
    edges: [wattShares.nothing, wattShares.low, wattShares.high],
  },
})

const blockedHose = (o: WattsOptions): CheckInput => ({
  kind: 'run',
  id: 'run-watts-blocked',
  name: 'Watts, hose blocked by hand',
  how: `${common} Read the watts with the hose open, then close its end with the flat hand for three seconds and read again. The motor speeds up and takes less. Plug out before touching.`,
  minutes: 1.5,
  caution: `${caution} Three seconds, no longer.`,
  outcomes: [
    { id: 'falls', name: 'Falls clearly' },
    { id: 'little', name: 'Falls a little' },
    { id: 'none', name: 'Does not fall' },
  ],
  sound: { falls: 0.9, little: 0.08, none: 0.02 },
  under: wattsBlockedUnder,
  ...driven(o, 'none'),
  scale: {
    unit: 'W',
    ofPlate: true,
    order: ['none', 'little', 'falls'],
    edges: [wattShares.noFall, wattShares.littleFall],
    asks: 'Watts open less watts blocked',
  },
})

const brushAlone = (brush: NonNullable<WattsOptions['brush']>): CheckInput => ({
  kind: 'run',
  id: 'run-watts-brush',
  name: 'Watts of the brush',
  how: `${common} On carpet: read the watts with the brush on (${brush.on}) and with it off (${brush.off}). With the plug out, the brush must turn freely by hand first. Plug out before touching.`,
  minutes: 2,
  caution,
  outcomes: [
    { id: 'turns', name: 'As the brush motor takes' },
    { id: 'high', name: 'Far more' },
    { id: 'none', name: 'Next to nothing' },
  ],
  sound: { turns: 0.94, high: 0.03, none: 0.03 },
  under: wattsBrushUnder,
  controls: brush.controls ?? { 'mains-switch': 'on', 'handle-position': 'reclined' },
  driven: { element: brush.motor ?? 'brush-motor', otherwise: 'none' },
  scale: {
    unit: 'W',
    ofPlate: true,
    order: ['none', 'turns', 'high'],
    edges: [brushShares.idle * brush.shareOfPlate, brushShares.overloaded * brush.shareOfPlate],
    asks: 'Watts with the brush on less watts with it off',
  },
})

const driven = (o: WattsOptions, otherwise = 'dead') => ({
  controls: o.runControls ?? { 'mains-switch': 'on' },
  driven: { element: o.suctionMotor ?? 'suction-motor', otherwise },
})

/**
 * Run checks with a plug-in power meter: hose open, hose blocked by hand, and the brush alone where it has a motor. All wait
 * for what must pass before running, and none asks anyone to hold back a motor.
 */
export const wattsChecks = (o: WattsOptions): BlueprintFragment => ({
  checks: [openHose(o), ...(o.hose ? [blockedHose(o)] : []), ...(o.brush === undefined ? [] : [brushAlone(o.brush)])],
})
