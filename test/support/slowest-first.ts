import { BaseSequencer, type TestSpecification } from 'vitest/node'

/**
 * Files that take half a minute and more, the slowest first. Among the others the runner puts first what took long the last time,
 * and knows nothing of that in a fresh copy.
 */
const slowest = [
  'crash/crash',
  'property/safety',
  'browser/whole-jobs',
  'browser/pages',
  'browser/proof',
  'browser/air',
  'browser/blueprints',
  'browser/bad-input',
  'story/whole-jobs',
  'browser/whole-sale',
  'browser/photos-offline',
  'browser/shelf',
  'property/money',
  'browser/adapt',
  'truth/machine/readings-against-spice',
  'unit/machine/drive-table',
  'unit/cli/main',
  'unit/cli/money',
  'browser/practice',
].map((name) => `/test/${name}.test.ts`)

const place = ({ moduleId }: TestSpecification): number => {
  const at = slowest.findIndex((file) => moduleId.endsWith(file))
  return at < 0 ? slowest.length : at
}

/** The order of the test files, such that the workers end at about the same time. */
export class SlowestFirst extends BaseSequencer {
  override async sort(files: TestSpecification[]): Promise<TestSpecification[]> {
    const usual = await super.sort(files)
    return usual.toSorted((a, b) => place(a) - place(b))
  }
}
