import { describe, expect, it } from 'vitest'
import { adverts } from '../../src/bench/adverts/adverts.ts'
import { buyAdvert } from '../../src/bench/adverts/buy-advert.ts'
import { comparedAdverts } from '../../src/bench/adverts/compared-adverts.ts'
import { guessOf } from '../../src/bench/adverts/guess-of.ts'
import { addNote } from '../../src/bench/commands.ts'
import type { MachineDocument } from '../../src/bench/contract.ts'
import { noteContentSchema, type NoteContentInput } from '../../src/bench/note.ts'
import { buyingView } from '../../src/machine/buying/index.ts'
import { advertOf, termsOf } from '../support/adverts.ts'
import { upright } from './bench-job.ts'
import { emptyBench } from './use-case-writer.ts'

describe('an advert weighed, bought, broken for parts and looked back on', () => {
  it('keeps what the seller said, and says how the guess compared', async () => {
    const deps = emptyBench()
    const advert = advertOf(upright, {
      words: 'brush not turning, motor is fine',
      complaints: undefined,
      askingMinor: 800,
      answers: [{ question: 'opened', answer: 'no' }],
    })
    const view = buyingView(advert, termsOf(upright, { effort: 0.1 }))
    expect(view.understood.complaints).toContain('brush-not-turning')
    const content = { kind: 'weighed' as const, name: 'Cream upright', advert, guess: guessOf(view) }
    const weighed = await adverts.begin(deps, content)
    if (weighed.kind !== 'done') throw new Error(weighed.kind)
    const { id } = weighed.document.state
    expect(await comparedAdverts(deps)).toEqual({ each: [], all: [] })
    const bought = await buyAdvert(deps, id, { version: 1, paidMinor: 700, source: 'boot-sale' })
    if (bought.kind !== 'done') throw new Error(bought.kind)
    let document: MachineDocument = bought.machine
    const write = async (input: NoteContentInput): Promise<void> => {
      const outcome = await addNote(deps, document.state.id, document.state.version, noteContentSchema.parse(input))
      if (outcome.kind !== 'done') throw new Error(JSON.stringify(outcome.problems))
      document = outcome.document
    }
    expect(document.lines[0].text).toContain('Answered before buying')
    await write({ kind: 'opened', cover: 'sole-plate', minutes: 3 })
    await write({ kind: 'opened', cover: 'belt-cover', minutes: 4 })
    await write({ kind: 'confirmed', fault: 'belt-stripped' })
    expect((await comparedAdverts(deps)).each).toEqual([])
    await write({ kind: 'left', exit: 'sell-for-spares', receivedMinor: 2000, minutes: 20 })
    const { each, all } = await comparedAdverts(deps)
    expect(each).toHaveLength(1)
    expect(each[0]).toMatchObject({
      advert: id,
      machine: document.state.id,
      paidMinor: 700,
      found: ['belt-stripped'],
      foreseen: content.guess.likely.some(({ fault }) => fault === 'belt-stripped'),
    })
    const { minutes, hourMinor, spentMinor } = document.state
    expect(each[0].gotMinor).toBe(Math.round(2000 - 700 - spentMinor - (minutes * hourMinor) / 60))
    expect(all).toMatchObject([{ count: 1, currency: 'GBP' }])
  })
})
