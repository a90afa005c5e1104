import { awgConductors } from '../../facts/awg.ts'
import { flexibleConductors } from '../../facts/conductors.ts'

/** The sizes of conductor in the tables, as options of a list. */
export const SizeOptions = () => (
  <>
    {flexibleConductors.map(({ areaMm2 }) => (
      <option key={areaMm2} value={`${areaMm2} mm2`}>
        {areaMm2} mm²
      </option>
    ))}
    {awgConductors.map(({ awg }) => (
      <option key={awg} value={`${awg} AWG`}>
        {awg} AWG
      </option>
    ))}
  </>
)
