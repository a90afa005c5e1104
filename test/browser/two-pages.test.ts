import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { blueprintById } from '../../src/blueprint/library.ts'
import { noteOnBench, putOnBench } from './bench.ts'
import { browserHere, phone } from './chromium.ts'
import { settled } from './looks.ts'
import { startApp, type RunningApp } from './running-app.ts'

const blueprint = blueprintById('bagless-upright')!
/** On a quiet computer it is a fraction of a second; what it took is printed. */
const patienceMs = 5000

describe.runIf(browserHere())('two pages on one machine', () => {
  let app: RunningApp
  beforeAll(async () => {
    app = await startApp()
  })
  afterAll(() => app.stop())

  it('the second shows what the first writes, without anyone touching it', async () => {
    const [first, second] = [await app.page(phone), await app.page(phone)]
    const { state } = await putOnBench(first, { blueprint: blueprint.id, plate: blueprint.plate })
    // By then the page listens, or it would ask only once it does.
    const listens = second.waitForResponse((response) => response.url().endsWith('/api/bench/own/changes'))
    await second.goto(`/machine/${state.id}`)
    await listens
    await settled(second)
    const text = 'Hums, the brush stands still'
    expect(await second.getByText(text).count()).toBe(0)
    const began = performance.now()
    await noteOnBench(first, state.id, { kind: 'said', text })
    await second.getByText(text).first().waitFor({ state: 'attached', timeout: patienceMs })
    const ms = performance.now() - began
    console.log(`a note from one page stood on the other after ${ms.toFixed(0)} ms`)
    expect(ms).toBeLessThanOrEqual(patienceMs)
    await Promise.all([first.close(), second.close()])
  })
})
