import type { Command } from 'commander'
import { inSentence } from '../base/in-sentence.ts'
import { stripView, type AwayPiece, type NextPiece, type StripView } from '../bench/stripping/strip-view.ts'
import { fixingsText } from '../bench/work-lines.ts'
import { listText, minutesText } from '../bench/words.ts'
import { beforeStripping } from '../facts/strip-cautions.ts'
import { findMachine } from './bench-commands.ts'
import { show, type Shell } from './output.ts'
import { answerWith, withBench } from './with-bench.ts'

/** `thrum strip`: what comes off and out, what goes back in which order, where the fixings are, what is left over. */
export const addStripCommand = (program: Command, shell: Shell): void => {
  program
    .command('strip <machine>')
    .description('taking a machine apart and putting it together: steps, fixings, what is left over')
    .action(
      withBench(shell, async ({ deps }, options, [wanted = '']) =>
        answerWith(shell, options, deps, await findMachine(deps, wanted), (job, document) => {
          const strip = stripView(document.notes, job.blueprint)
          return show(shell.output, options.json, strip, () => stripLines(strip))
        }),
      ),
    )
}

const stripLines = (strip: StripView): readonly string[] => {
  const now = strip.next.filter(({ after }) => after.length === 0)
  return [
    ...beforeStripping.map((text) => `! ${text}`),
    ...(strip.away.length === 0
      ? ['Nothing is off or out']
      : ['Goes back, in this order:', ...strip.away.map(awayLine)]),
    ...(strip.kept.length === 0 ? [] : [`Fixings kept: ${strip.balance.kept}`, ...strip.kept.map(keptLine)]),
    ...strip.warnings.map((text) => `! ${text}`),
    ...strip.notCounted,
    ...strip.deviations.map(({ text }) => `Different here: ${text}`),
    ...(now.length === 0 ? [] : ['Comes off or out now:', ...now.flatMap(nextLines)]),
    `${strip.next.length - now.length} more behind covers that are on`,
  ]
}

const awayLine = ({ piece, kept, isCounted }: AwayPiece): string =>
  `  ${piece.name}: ${!isCounted ? 'nobody counted' : kept.length === 0 ? 'no fixings' : fixingsText(kept)}  (${piece.id})`

const keptLine = ({ place, lots }: StripView['kept'][number]): string => {
  const each = lots.map(({ count, kind, piece }) => `${count} × ${kind} of the ${inSentence(piece.name)}`)
  return `  ${place === '' ? 'not said where' : place}: ${listText(each)}`
}

const nextLines = ({ piece, fixings, minutes, cautions }: NextPiece): readonly string[] => {
  const held = [...(fixings === null ? [] : [fixingsText(fixings)]), ...(minutes === 0 ? [] : [minutesText(minutes)])]
  const said = held.filter((text) => text !== '').join(', ')
  return [
    `  ${piece.name}${said === '' ? '' : `: ${said}`}  (${piece.id}${piece.kind === 'part' ? ', part' : ''})`,
    ...cautions.map((text) => `    ! ${text}`),
  ]
}
