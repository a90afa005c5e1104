import { afterAll, beforeAll, describe, it } from 'vitest'
import { BenchJob } from '../story/bench-job.ts'
import { wholeJobs } from '../story/jobs.ts'
import { browserHere, phone } from './chromium.ts'
import { pageWriter } from './page-writer.ts'
import { startApp, type RunningApp } from './running-app.ts'

describe.runIf(browserHere())('whole jobs on a phone-sized page', () => {
  let app: RunningApp
  beforeAll(async () => {
    app = await startApp()
  })
  afterAll(() => app.stop())

  it.each(wholeJobs.map((job) => [job.name, job] as const))(
    '%s',
    { timeout: 180_000 },
    async (_name, { intake, run }) => {
      const page = await app.page(phone)
      page.setDefaultTimeout(20_000)
      await run(await BenchJob.begin(pageWriter(page), intake))
      await page.close()
    },
  )
})
