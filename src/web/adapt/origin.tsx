import { useQuery } from '@tanstack/react-query'
import { getBlueprintOrigin } from '../api.ts'
import { Link } from '../router.tsx'
import { momentText } from '../words.ts'

/** Blueprints of one's own have ids that begin like this. */
export const isOwn = (id: string): boolean => id.startsWith('own-')

/** What a blueprint of one's own was made from, and in what it differs; nothing for one that came with the program. */
export const Origin = ({ id }: { readonly id: string }) => {
  const { data: origin } = useQuery({
    queryKey: ['blueprint-origin', id],
    queryFn: ({ signal }) => getBlueprintOrigin(id, signal),
    enabled: isOwn(id),
    staleTime: Infinity,
  })
  if (origin === undefined) return null
  const { base, differences, savedAt } = origin
  return (
    <div className="origin">
      <p className="quiet">
        Your own, kept {momentText(savedAt)}.{' '}
        {base === null ? null : (
          <>
            Made from <Link to={{ kind: 'blueprint', id: base.id }}>{base.name}</Link>:
          </>
        )}
      </p>
      {differences.length === 0 ? null : (
        <ul>
          {differences.map((text) => (
            <li key={text}>{text}</li>
          ))}
        </ul>
      )}
    </div>
  )
}
