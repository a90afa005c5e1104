import type { Problem } from '../../base/problem.ts'

/** What was refused and the mend, said aloud when it appears. */
export const Problems = ({ problems }: { readonly problems: readonly Problem[] }) =>
  problems.length === 0 ? null : (
    <div className="problems" role="alert">
      {problems.map((one) => (
        <p key={`${one.code} ${one.where} ${one.what}`}>
          {one.what}. {one.mend === '' ? null : `${one.mend}.`}
        </p>
      ))}
    </div>
  )
