import type { AirRig } from '../machine/index.ts'

const kPa = (pressurePa: number): string => `${(pressurePa / 1000).toFixed(1)} kPa`
const litres = (airflowM3PerS: number): string => `${(airflowM3PerS * 1000).toFixed(1)} L/s`

/** A rig as lines of text. */
export const rigLines = (rig: AirRig): readonly string[] => [
  `Kind: ${rig.suctionClass.name}`,
  ...rig.suctionClass.decided.map((one) => `  ${one}`),
  'Holes, in the order of drilling, and what a typical machine of the kind shows in standard air:',
  ...rig.holes.flatMap(holeLines),
  `  sealed     ${kPa(rig.sealed.suctionPa)}; of the kind ${rig.sealed.rangePa.map(kPa).join(' to ')}`,
  `  open       ${litres(rig.openM3PerS)}`,
  `Most air power: ${peakText(rig)}`,
  `Gauge: to ${kPa(rig.gauge.rangePa)} or more`,
  ...rig.gauge.gauges.map(({ name, text }) => `  ${name}: ${text}`),
  'Making it:',
  ...rig.making.map((one) => `  ${one}`),
  'Cautions:',
  ...rig.cautions.map((one) => `  ${one}`),
  'Sources:',
  ...rig.sources.map(({ figure, source }) => `  ${figure}: ${source}`),
]

const holeLines = (hole: AirRig['holes'][number]): readonly string[] => [
  `  ${`${hole.diameterMm} mm`.padEnd(10)} ${kPa(hole.suctionPa)}, ${litres(hole.airflowM3PerS)}, ${hole.airPowerW.toFixed(0)} W; ${Math.round(100 * hole.shareOfOpen)} % of the open airflow; ${hole.drill}`,
  ...hole.remarks.map((remark) => `             ${remark}.`),
]

const peakText = ({ peak, peakHoleMm }: AirRig): string =>
  peak.kind === 'no-peak'
    ? `${peak.reason}. ${peak.mend}.`
    : `${peak.airPowerW.toFixed(0)} W at ${litres(peak.airflowM3PerS)} and ${kPa(peak.suctionPa)}, as a hole of ${peakHoleMm?.toFixed(1)} mm would give`
