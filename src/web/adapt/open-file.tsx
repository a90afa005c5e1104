import { useQueryClient } from '@tanstack/react-query'
import { useId, useRef, useState } from 'react'
import { Button } from 'react-aria-components/Button'
import { problem, type Problem } from '../../base/problem.ts'
import { keepBlueprint } from '../api.ts'
import { say } from '../parts/live.tsx'
import { goTo } from '../router.tsx'
import '../style/adapt.css'

const shownAtOnce = 20

/** Takes in a blueprint from a file. Its mistakes are shown here, each with where it is and the mend. */
export const OpenFile = () => {
  const client = useQueryClient()
  const input = useRef<HTMLInputElement>(null)
  const id = useId()
  const [busy, setBusy] = useState(false)
  const [problems, setProblems] = useState<readonly Problem[]>([])
  const take = async (file: File): Promise<void> => {
    const content = await jsonIn(file)
    if (content === null) return setProblems([notJson(file.name)])
    const answer = await keepBlueprint(content)
    if (answer.kind === 'refused') return setProblems(answer.problems)
    setProblems([])
    client.setQueryData(['blueprint', answer.value.id], answer.value.blueprint)
    void client.invalidateQueries({ queryKey: ['blueprints'] })
    if (!answer.value.isNew) say('This one is here already.')
    goTo({ kind: 'blueprint', id: answer.value.id })
  }
  const choose = async (files: FileList | null): Promise<void> => {
    const file = files?.[0]
    if (file === undefined) return
    setBusy(true)
    await take(file)
    setBusy(false)
    // The same file can be chosen again once it is mended.
    if (input.current !== null) input.current.value = ''
  }
  return (
    <section className="open-file" aria-label="Open a file">
      <Button className="key" isDisabled={busy} onPress={() => input.current?.click()}>
        Open a file
      </Button>
      <input
        ref={input}
        id={id}
        type="file"
        accept=".json,application/json"
        className="unseen"
        tabIndex={-1}
        aria-label="Blueprint file"
        onChange={(event) => void choose(event.target.files)}
      />
      <Mistakes problems={problems} />
    </section>
  )
}

const Mistakes = ({ problems }: { readonly problems: readonly Problem[] }) =>
  problems.length === 0 ? null : (
    <div className="problems" role="alert">
      <p>{problems.length === 1 ? 'Not opened: one mistake.' : `Not opened: ${problems.length} mistakes.`}</p>
      <ul className="mistakes">
        {problems.slice(0, shownAtOnce).map((one) => (
          <li key={`${one.code} ${one.where} ${one.what}`}>
            {one.where === '' ? null : <code>{one.where}</code>} {one.what}. {one.mend === '' ? null : `${one.mend}.`}
          </li>
        ))}
      </ul>
      {problems.length > shownAtOnce ? <p>Mend these first; then the others show.</p> : null}
    </div>
  )

const jsonIn = async (file: File): Promise<unknown> => {
  try {
    return JSON.parse(await file.text()) as unknown
  } catch {
    return null
  }
}

const notJson = (name: string): Problem =>
  problem(
    'not-json',
    name,
    'This file is not JSON',
    'Choose a file that was saved from a Blueprint page, or written like one',
  )
