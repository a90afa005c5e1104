import type { Edit } from '../../blueprint/adapt-edits.ts'
import { useSheet } from '../machine/sheet.ts'
import { say } from '../parts/live.tsx'
import { Problems } from '../parts/problems.tsx'
import { useNotes } from '../use-notes.ts'
import { Unfolding } from './unfolding.tsx'
import { VariantForm } from './variant-form.tsx'

/**
 * A quiet line on the Machine page for a machine that is not quite as its blueprint says. It opens on the page itself, and
 * nothing that is being entered elsewhere is touched. A virtual machine is as it was made, so it has no such line.
 */
export const Different = () => {
  const { bench, document, blueprint } = useSheet()
  const { state } = document
  const { write, problems } = useNotes(bench, state.id)
  if (state.practiceSeed !== null) return null
  const use = async (variant: string, edits: readonly Edit[]): Promise<boolean> => {
    // The very same variant kept before: the machine is read by it already.
    if (variant === blueprint.id) return true
    return write([{ kind: 'described-by', blueprint: variant, edits: [...edits] }])
  }
  return (
    <section className="different" aria-label="This machine is different">
      <Unfolding label="This machine is different" className="plain">
        {(close) => (
          <>
            <p className="quiet">Read by: {blueprint.name}. Say what is different on this one.</p>
            <VariantForm
              key={blueprint.id}
              blueprint={blueprint}
              keptAs={`${state.id} ${blueprint.id}`}
              firstName={state.name}
              saveLabel="Use for this machine"
              onKept={async (variant, edits) => {
                if (!(await use(variant, edits))) return false
                say('This machine is read by the variant from here on.')
                close()
                return true
              }}
            />
            <Problems problems={problems} />
          </>
        )}
      </Unfolding>
    </section>
  )
}
