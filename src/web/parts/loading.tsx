import { Refusal } from '../api.ts'
import { Problems } from './problems.tsx'
import { problem } from '../../base/problem.ts'

/** In place of what has not come yet: what it is, or why it does not come. */
export const Loading = ({ what, error }: { readonly what: string; readonly error: Error | null }) => {
  if (error === null) return <p className="quiet">Fetching {what} …</p>
  const problems =
    error instanceof Refusal ? error.problems : [problem('failed', '', error.message, 'Load the page again')]
  return <Problems problems={problems} />
}
