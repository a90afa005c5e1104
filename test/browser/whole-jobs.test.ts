import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { BenchJob } from '../story/bench-job.ts'
import { wholeJobs } from '../story/jobs.ts'
import { browserHere, phone } from './chromium.ts'
import { pageWriter, tappingWriter } from './page-writer.ts'
import { startApp, type RunningApp } from './running-app.ts'
import { depth } from '../support/depth.ts'

/** The checks before running are the same in every job; they are tapped in the one that is about nothing else. */
const tapped = wholeJobs.find(({ name }) => name.startsWith('nothing wrong'))

/** The pages write for every job alike, and the use-cases go through all of them; here every other one will do. */
const jobsHere = depth > 1 ? wholeJobs : wholeJobs.filter((_job, at) => at % 2 === 0)

describe.runIf(browserHere())('whole jobs on a phone-sized page', () => {
  let app: RunningApp
  beforeAll(async () => {
    expect(tapped).toBeDefined()
    app = await startApp()
  })
  afterAll(() => app.stop())

  it.each(jobsHere.map((job) => [job.name, job] as const))('%s', { timeout: 180_000 }, async (_name, job) => {
    const page = await app.page(phone)
    page.setDefaultTimeout(20_000)
    const writer = job === tapped ? tappingWriter(page) : pageWriter(page)
    await job.run(await BenchJob.begin(writer, job.intake))
    await page.close()
  })
})
