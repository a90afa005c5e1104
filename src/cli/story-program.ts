import { writeFile } from 'node:fs/promises'
import type { Command } from 'commander'
import { filmTime } from '../base/film-time.ts'
import { problem } from '../base/problem.ts'
import { ok, refused, type Result } from '../base/result.ts'
import type { MachineDocument } from '../bench/contract.ts'
import { currentSettings } from '../bench/settings.ts'
import { chaptersText, filmsOf } from '../bench/story/chapters.ts'
import { plainTexts } from '../bench/story/plain-text.ts'
import { storyView } from '../bench/story/story-view.ts'
import { storyHtml } from '../report/story-html.ts'
import { findMachine, writeNote } from './bench-commands.ts'
import { show, showProblems, type Shell } from './output.ts'
import { answer, answerWith, withBench } from './with-bench.ts'

/** `thrum story`, `thrum camera` and `thrum chapters`: the whole job as a file, and the marks of a film of it. */
export const addStoryCommands = (program: Command, shell: Shell): void => {
  addStory(program, shell)
  addCamera(program, shell)
  addChapters(program, shell)
}

const addStory = (program: Command, shell: Shell): void => {
  program
    .command('story <machine>')
    .description('the whole job as one HTML file that needs nothing beside it')
    .requiredOption('--out <file>', 'where to write it')
    .option('--money', 'with what it cost and brought')
    .action(
      withBench(shell, async ({ deps, photos }, options, [wanted = '']) =>
        answerWith(shell, options, deps, await findMachine(deps, wanted), async (job, document) => {
          const { region } = await currentSettings(deps.settings)
          const withMoney = (options as { readonly money?: unknown }).money === true
          const asked = { document, blueprint: job.blueprint, job, region, withMoney, isDemo: false }
          const html = await storyHtml(storyView(asked), ({ photo, size }) => photos.get(photo, size))
          const out = String(options['out'])
          const written = await write(out, html)
          if (written.kind === 'refused') return showProblems(shell.output, options.json, written.problems)
          const bytes = Buffer.byteLength(html)
          return show(shell.output, options.json, { file: out, bytes }, () => [`Story written: ${out}, ${bytes} bytes`])
        }),
      ),
    )
}

const write = async (file: string, html: string): Promise<Result<null>> => {
  try {
    await writeFile(file, html)
    return ok(null)
  } catch (error) {
    const what = `The story cannot be written here (${(error as Error).message})`
    return refused(problem('cannot-write', file, what, 'Name a file in a folder that is there'))
  }
}

const addCamera = (program: Command, shell: Shell): void => {
  program
    .command('camera <machine> <state>')
    .description('the camera is on or off: from then on notes make chapters, or no more')
    .option('--film <name>', 'which film it is, where there are several', '')
    .action(
      withBench(shell, async ({ deps }, options, [wanted = '', state = '']) => {
        if (state !== 'on' && state !== 'off')
          return showProblems(shell.output, options.json, [
            problem('not-a-state', 'state', `“${state}” is no state of a camera`, 'Write on or off'),
          ])
        const found = await findMachine(deps, wanted)
        if (found.kind === 'refused') return showProblems(shell.output, options.json, found.problems)
        const film = String(options['film'] ?? '')
        const noted = { kind: 'camera', state: state === 'on' ? 'rolling' : 'stopped', film } as const
        return answer(shell, options, deps, await writeNote(deps, found.value, noted))
      }),
    )
}

const addChapters = (program: Command, shell: Shell): void => {
  program
    .command('chapters <machine>')
    .description('the marks of its films to copy: h:mm:ss and what begins there')
    .action(
      withBench(shell, async ({ deps }, options, [wanted = '']) =>
        answerWith(shell, options, deps, await findMachine(deps, wanted), ({ blueprint }, document) =>
          showChapters(shell, options.json, document, plainTexts(document.notes, blueprint)),
        ),
      ),
    )
}

const showChapters = (
  shell: Shell,
  asJson: boolean,
  { notes }: MachineDocument,
  textOf: ReturnType<typeof plainTexts>,
): number => {
  const films = filmsOf(notes, textOf)
  const value = {
    ...films,
    films: films.films.map((film) => ({
      ...film,
      chapters: film.chapters.map((chapter) => ({ ...chapter, time: filmTime(chapter.atMs) })),
    })),
  }
  return show(shell.output, asJson, value, () =>
    films.films.length === 0 ? ['No film yet. Say when the camera is on: thrum camera ID on'] : [chaptersText(films)],
  )
}
