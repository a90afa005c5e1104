import { Button } from 'react-aria-components/Button'
import type { FindingView } from '../../machine/proof/proof-view.ts'
import { say } from '../parts/live.tsx'
import { Problems } from '../parts/problems.tsx'
import { useNotes } from '../use-notes.ts'
import { capital } from '../words.ts'
import { useProofSheet } from './proof-sheet.ts'

export const kindWords: Readonly<Record<FindingView['kind'], string>> = {
  pass: 'passed',
  'pass-within-uncertainty': 'right side, but too close to prove it',
  'fail-within-uncertainty': 'wrong side, though by less than the uncertainty',
  fail: 'failed',
  'not-provable': 'proves nothing',
}

/** What was found in one check, what it comes to, and one tap to strike it out. */
export const FindingList = ({ findings }: { readonly findings: readonly FindingView[] }) => {
  const { bench, document } = useProofSheet()
  const { write, busy, problems } = useNotes(bench, document.state.id)
  if (findings.length === 0) return null
  const strike = async ({ where, read }: FindingView, note: string): Promise<void> => {
    if (await write([{ kind: 'struck', note, reason: '' }])) say(`Struck out: ${where}, ${read}`)
  }
  const canStrike = (note: string | null): note is string =>
    document.lines.some((line) => line.id === note && line.canStrike)
  return (
    <>
      <Problems problems={problems} />
      {findings.length > 1 ? (
        <p className="quiet">
          All of these count, and the worst decides; one that proves nothing gives way to one at the same place that
          does.
        </p>
      ) : null}
      <ul className="log findings" aria-label="Found">
        {findings.map((finding, at) => {
          const { note, where, read } = finding
          return (
            <li key={note ?? at} className={finding.kind}>
              <FindingHead finding={finding} />
              {canStrike(note) ? (
                <Button
                  className="plain strike"
                  isDisabled={busy}
                  aria-label={`Strike out: ${where}, ${read}`}
                  onPress={() => void strike(finding, note)}
                >
                  strike out
                </Button>
              ) : null}
              <FindingMore finding={finding} />
            </li>
          )
        })}
      </ul>
    </>
  )
}

const FindingHead = ({ finding: { where, read, kind } }: { readonly finding: FindingView }) => (
  <span>
    {capital(where)}: <strong>{read}</strong>, <strong className="finding-kind">{kindWords[kind]}</strong>
  </span>
)

const FindingMore = ({ finding }: { readonly finding: FindingView }) => {
  const { where, sentence, uncertainty, instrument, checkedOn } = finding
  // Of a look without a word of its own the line above has said it all.
  const isSaid = sentence.toLowerCase().startsWith(`${where.toLowerCase()}: `)
  const made = [
    uncertainty === '' ? '' : `uncertainty ${uncertainty}`,
    instrument,
    checkedOn === '' ? '' : `last checked ${checkedOn}`,
  ].filter((part) => part !== '')
  return (
    <span className="finding-more">
      {isSaid ? null : <span>{sentence}</span>}
      <span className="quiet finding-made">{capital(made.join(', '))}</span>
    </span>
  )
}
