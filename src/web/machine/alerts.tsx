import { useSheet } from './sheet.ts'

/** What must be seen before anything else: dangers, and readings that nothing explains. */
export const Alerts = ({ failure }: { readonly failure: string | null }) => {
  const { view, document, blueprint } = useSheet()
  const repairs = (ids: readonly string[]): string =>
    ids.map((id) => blueprint.repairs.find((repair) => repair.id === id)?.name ?? id).join(', or ')
  const lineOf = (note: string): string | undefined => document.lines.find((line) => line.id === note)?.text
  if (failure !== null) return <FailureAlert failure={failure} />
  if (view === null) return <p className="quiet">Working out the next move …</p>
  return (
    <>
      {view.redFlags.map((flag) => (
        <section key={flag.note} className="alert danger" aria-label="Not to be run">
          <h2>Do not run it</h2>
          <p>{flag.text}</p>
          {flag.mendedBy.length === 0 ? null : <p>Mended by: {repairs(flag.mendedBy)}.</p>}
        </section>
      ))}
      {view.unexplained === null ? null : (
        <section className="alert" aria-label="Unexplained">
          <h2>Nothing in this blueprint explains this</h2>
          <p>{view.unexplained.text}</p>
          {lineOf(view.unexplained.note) === undefined ? null : (
            <p className="quiet">{lineOf(view.unexplained.note)}</p>
          )}
          <p>
            Take the reading again, strike it out if it was a slip, or look for something the blueprint does not know.
          </p>
        </section>
      )}
    </>
  )
}

const FailureAlert = ({ failure }: { readonly failure: string }) => (
  <section className="alert danger" role="alert">
    <h2>The next move could not be worked out</h2>
    <p>{failure}</p>
    <p>The notes are safe. Any check can still be chosen and entered below.</p>
  </section>
)
