import type { BenchId } from '../../bench/contract.ts'
import { Loading } from '../parts/loading.tsx'
import { useBlueprint, useMachine } from '../queries.ts'
import { Link, PageTitle } from '../router.tsx'
import { Camera } from '../story/camera.tsx'
import { ChapterList } from '../story/chapter-list.tsx'
import { StoryFile } from '../story/story-file.tsx'
import { useFilms } from '../story/use-films.ts'
import '../style/story.css'

/** The whole job to show to others: its story as a file, and the chapters of a film of it. */
export const StoryPage = ({ bench, id }: { readonly bench: BenchId; readonly id: string }) => {
  const { data: document, error } = useMachine(bench, id)
  const { data: blueprint, error: blueprintError } = useBlueprint(document?.state.blueprint ?? '')
  const found = useFilms(document, blueprint)
  if (document === undefined || found === null)
    return (
      <div className="sheet">
        <PageTitle windowTitle="Story">Story and film</PageTitle>
        <Loading what="its story" error={error ?? blueprintError} />
      </div>
    )
  const { name, left } = document.state
  return (
    <div className="sheet">
      <PageTitle windowTitle={`${name}: story`}>{name}: story and film</PageTitle>
      <Link to={{ kind: 'machine', bench, id }} className="on-its-own">
        Back to the machine
      </Link>
      <StoryFile bench={bench} document={document} />
      {left === null ? <Camera bench={bench} machine={id} films={found.films} /> : null}
      <ChapterList films={found.films} text={found.text} />
    </div>
  )
}
