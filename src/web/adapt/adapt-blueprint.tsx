import type { Blueprint } from '../../blueprint/schema.ts'
import { goTo } from '../router.tsx'
import { Origin } from './origin.tsx'
import { Unfolding } from './unfolding.tsx'
import { VariantForm } from './variant-form.tsx'

/** Makes a variant of this blueprint, or saves it as a file. */
export const AdaptBlueprint = ({ blueprint }: { readonly blueprint: Blueprint }) => {
  const saveAsFile = (
    <a className="key" href={`/api/blueprints/${encodeURIComponent(blueprint.id)}/file`} download>
      Save as file
    </a>
  )
  const show = (variant: string): Promise<boolean> => {
    goTo({ kind: 'blueprint', id: variant })
    return Promise.resolve(true)
  }
  return (
    <section className="different" aria-label="Adapt or save">
      <Origin id={blueprint.id} />
      <Unfolding label="Adapt" className="key" beside={saveAsFile}>
        {() => (
          <>
            <p className="quiet">This blueprint stays as it is; what you save is a variant under a name of its own.</p>
            <VariantForm
              blueprint={blueprint}
              keptAs={blueprint.id}
              firstName=""
              saveLabel="Save the variant"
              onKept={show}
            />
          </>
        )}
      </Unfolding>
    </section>
  )
}
