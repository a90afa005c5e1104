import { useId, useState, type CSSProperties, type ReactNode } from 'react'
import { moneyText } from '../../base/money.ts'
import { branchesOf, branchOf, stopRules, type Branch, type Leaf } from '../../machine/branches.ts'
import { undertakingOf, type Undertaking } from '../../machine/undertaking.ts'
import type { UnfoldStep } from '../../machine/unfold.ts'
import type { MoveView } from '../../machine/view.ts'
import { Fold } from '../parts/fold.tsx'
import { percentText } from '../words.ts'
import { useSheet } from './sheet.ts'
import { useUnfolding } from './use-unfolding.ts'
import '../style/then.css'

/** Levels that can be unfolded one under another. */
const mostLevels = 3

/** What each result of the move on the card would lead to, worked out when it is opened. Nothing for an exit. */
export const WhatThen = ({ move }: { readonly move: MoveView }) => {
  const undertaking = undertakingOf(move)
  if (undertaking === null) return null
  return (
    <Fold title="What then?" className="what-then">
      <p className="hint">
        How likely each result is when the check tells something, what comes next, and the money expected from there.
      </p>
      <div className="then-root">
        <p className="then-from">{move.name}</p>
        <Level steps={[]} move={undertaking} name={move.name} level={1} />
      </div>
    </Fold>
  )
}

type LevelProps = {
  readonly steps: readonly UnfoldStep[]
  readonly move: Undertaking
  readonly name: string
  readonly level: number
}

/** The results of one move, each with what comes next, and when to stop. */
const Level = ({ steps, move, name, level }: LevelProps) => {
  const { document } = useSheet()
  const { leaves, lessLikely, busy, failure } = useUnfolding(steps, move)
  if (failure !== null) return <p className="quiet">Could not be worked out: {failure}</p>
  if (leaves === null) return <p className="quiet">Working it out …</p>
  const onLeaf = (leaf: Leaf): ReactNode =>
    level === mostLevels || leaf.onward === null || leaf.onward.move === null ? null : (
      <Level
        steps={[...steps, { move, result: leaf.result.result }]}
        move={leaf.onward.move}
        name={leaf.onward.name}
        level={level + 1}
      />
    )
  return (
    <div className="then-level" aria-busy={busy}>
      <ul className="then" aria-label={`What may come of: ${name}`}>
        {branchesOf(leaves).map((branch) => (
          <BranchItem key={branch.key} branch={branch} onLeaf={onLeaf} />
        ))}
        {lessLikely > 0 ? (
          <li style={weight(lessLikely)}>
            <p className="then-result quiet">
              <span className="figure">{percentText(lessLikely)}</span> less likely results
            </p>
          </li>
        ) : null}
      </ul>
      {stopRules(leaves, lessLikely, document.state.currency).map((rule) => (
        <p key={rule} className="then-stop">
          {rule}
        </p>
      ))}
    </div>
  )
}

/** A number stays with its unit. */
const unbroken = (text: string): string => text.replace(/ (?=[kM]?Ω)/g, '\u00a0')

/** The likelier a branch, the heavier its line. */
const weight = (share: number): CSSProperties => ({ '--share': share }) as CSSProperties

type BranchProps = { readonly branch: Branch; readonly onLeaf: (leaf: Leaf) => ReactNode }

const BranchItem = ({ branch, onLeaf }: BranchProps) => {
  const [open, setOpen] = useState(false)
  const id = useId()
  const canOpen = branch.leaves.some((leaf) => onLeaf(leaf) !== null)
  return (
    <li style={weight(branch.probability)}>
      <div className="then-line">
        <p className="then-result">
          <strong className="figure">{percentText(branch.probability)}</strong> {unbroken(branch.text)}
        </p>
        {canOpen ? (
          <button
            type="button"
            className="then-next"
            aria-expanded={open}
            aria-controls={id}
            onClick={() => setOpen(!open)}
          >
            <Next branch={branch} />
            <span className="then-mark" aria-hidden="true">
              {open ? '−' : '+'}
            </span>
          </button>
        ) : (
          <p className="then-next">
            <Next branch={branch} />
          </p>
        )}
      </div>
      <div id={id} hidden={!open}>
        {open && canOpen ? <Under branch={branch} onLeaf={onLeaf} /> : null}
      </div>
    </li>
  )
}

/** What is under an opened branch: the results of its next move; where several results lead to it, first which of them. */
const Under = ({ branch, onLeaf }: BranchProps) =>
  branch.leaves.length === 1 ? (
    onLeaf(branch.leaves[0])
  ) : (
    <ul className="then" aria-label="Which of these results">
      {branch.leaves.map((leaf) => (
        <BranchItem key={leaf.result.id} branch={branchOf(leaf.result.id, [leaf])} onLeaf={onLeaf} />
      ))}
    </ul>
  )

const Next = ({ branch: { name, isExit, expectedMinor, failure } }: Pick<BranchProps, 'branch'>) => {
  const { document } = useSheet()
  if (failure !== null) return <span className="quiet">could not be worked out</span>
  if (name === null || expectedMinor === null) return <span className="quiet">working it out …</span>
  return (
    <>
      <span className="unseen">then: </span>
      <span className={isExit ? 'then-name then-exit' : 'then-name'}>{name}</span>{' '}
      <span className="figure">{moneyText(expectedMinor, document.state.currency)}</span>
    </>
  )
}
