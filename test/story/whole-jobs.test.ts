import { describe, it } from 'vitest'
import { BenchJob } from './bench-job.ts'
import { wholeJobs } from './jobs.ts'
import { useCaseWriter } from './use-case-writer.ts'

describe.each(wholeJobs.map((job) => [job.name, job] as const))('%s', (_name, { tells, intake, run }) => {
  it(tells, async () => run(await BenchJob.begin(useCaseWriter(), intake)))
})
