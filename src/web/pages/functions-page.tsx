import { sourceText } from '../../base/source-text.ts'
import type { BenchId } from '../../bench/contract.ts'
import { functionKindsSource, shownWhenTried, soundTakenForBad } from '../../facts/function-kind.ts'
import { FunctionList } from '../functions/function-list.tsx'
import { FunctionsSheetContext } from '../functions/functions-sheet.ts'
import { useFunctions } from '../functions/use-functions.ts'
import { Fold } from '../parts/fold.tsx'
import { Loading } from '../parts/loading.tsx'
import { useBlueprint, useMachine } from '../queries.ts'
import { Link, PageTitle } from '../router.tsx'
import type { AnswerableFunctions } from '../../bench/functions/functions-view.ts'
import '../style/functions.css'

/** Does it all work? Every function of a machine, tried before it is sold. */
export const FunctionsPage = ({ bench, id }: { readonly bench: BenchId; readonly id: string }) => {
  const { data: document, error } = useMachine(bench, id)
  const { data: blueprint, error: blueprintError } = useBlueprint(document?.state.blueprint ?? '')
  const { functions, stale, error: failure } = useFunctions(document, blueprint)
  const title = document === undefined ? 'Does it all work?' : `${document.state.name}: does it all work?`
  return (
    <div className="sheet functions-page">
      <PageTitle windowTitle={title}>{title}</PageTitle>
      <Link to={{ kind: 'machine', bench, id }} className="on-its-own">
        Back to the machine
      </Link>
      {document === undefined || blueprint === undefined || functions === null ? (
        <Loading what="its functions" error={error ?? blueprintError ?? failure} />
      ) : (
        <FunctionsSheetContext value={{ bench, document, blueprint, stale }}>
          <p className="verdict" aria-busy={stale}>
            {functions.verdict}
          </p>
          {document.state.left === null ? null : <p>It has left the bench.</p>}
          {document.state.practiceSeed === null ? (
            <FunctionList view={functions} />
          ) : (
            <p>This machine is virtual: there is nothing on it to try by hand.</p>
          )}
          <NotCovered view={functions} />
          <p className="hint">
            {[functionKindsSource, soundTakenForBad.source, shownWhenTried.source].map(sourceText).join('. ')}.
          </p>
        </FunctionsSheetContext>
      )}
    </div>
  )
}

const NotCovered = ({ view: { notCovered } }: { readonly view: AnswerableFunctions }) =>
  notCovered.length === 0 ? null : (
    <Fold title={`Not tried by any of these: ${notCovered.length}`}>
      <ul>
        {notCovered.map(({ part, why }) => (
          <li key={part.id}>
            {part.name}: {why}
          </li>
        ))}
      </ul>
    </Fold>
  )
