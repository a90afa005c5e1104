import type { ShownUnits } from './curve-lines.ts'

/** The head of a table of holes. */
export const FlowHead = ({ units }: { readonly units: ShownUnits }) => (
  <thead>
    <tr>
      <th scope="col">Hole, mm</th>
      <th scope="col">Suction, {units.suction}</th>
      <th scope="col">Airflow, {units.airflow}</th>
      <th scope="col">Air power, W</th>
    </tr>
  </thead>
)
