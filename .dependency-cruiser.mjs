/** The layers of the house as rules. Each says why, to the person who just broke it. */
const folder = (name) => `^src/${name}/`
const mayOnlyUse = (name, allowed, reason) => ({
  name: `${name.replace('/', '-')}-uses-only-what-is-below`,
  comment: reason,
  severity: 'error',
  from: { path: folder(name) },
  to: { path: '^src/', pathNot: [folder(name), ...allowed.map(folder)].join('|') },
})

export default {
  forbidden: [
    {
      name: 'no-cycles',
      comment: 'Two files that need each other are one thing or three: move what both need into a file of its own.',
      severity: 'error',
      from: { path: '^src/' },
      to: { circular: true },
    },
    {
      name: 'engines-are-entered-by-their-door',
      comment: 'What an engine exports in index.ts is its promise; what lies behind may change any day.',
      severity: 'error',
      from: { path: '^src/', pathNot: '^src/engines/' },
      to: { path: '^src/engines/[^/]+/', pathNot: '^src/engines/[^/]+/index\\.ts$' },
    },
    {
      name: 'engines-are-peers',
      comment: 'Each engine is tested against the literature on its own; what joins them belongs in src/machine.',
      severity: 'error',
      from: { path: '^src/engines/([^/]+)/' },
      to: { path: '^src/engines/', pathNot: '^src/engines/$1/' },
    },
    {
      name: 'pure-code-knows-no-machine',
      comment:
        'base, facts, blueprint, engines, machine and bench run unchanged in Node, in a browser worker and in tests.',
      severity: 'error',
      from: { path: '^src/(base|facts|blueprint|engines|machine|bench)/' },
      to: { dependencyTypes: ['core'] },
    },
    mayOnlyUse('base', [], 'base is the ground floor: nothing of ours lies below it.'),
    mayOnlyUse('facts', ['base'], 'Facts are figures with sources; they know no blueprint and no engine.'),
    mayOnlyUse('blueprint', ['base', 'facts'], 'A blueprint is data; engines read it through src/machine.'),
    mayOnlyUse(
      'engines',
      ['base', 'facts'],
      'Engines are general: they know circuits and probabilities, not vacuum cleaners.',
    ),
    mayOnlyUse(
      'machine',
      ['base', 'facts', 'blueprint', 'engines'],
      'machine composes blueprint and engines; notes and storage are for those above.',
    ),
    mayOnlyUse(
      'bench',
      ['base', 'facts', 'blueprint', 'engines', 'machine'],
      'Use-cases know ports, never a database, a server or a screen.',
    ),
    mayOnlyUse(
      'report',
      ['base'],
      'A report lays out view models that are handed to it; what they mean is worked out before.',
    ),
    mayOnlyUse('store', ['base', 'bench'], 'A store keeps notes; what they mean is for bench.'),
    {
      name: 'shells-do-not-know-the-web',
      comment: 'Server and command line serve the built pages as files; they import none of their code.',
      severity: 'error',
      from: { path: '^src/(server|cli|store)/' },
      to: { path: '^src/web/' },
    },
    {
      name: 'pages-run-engines-in-the-worker',
      comment:
        'Engines take tens of milliseconds; on the page they would block typing. Only *.worker.ts may import them. Types, the small words of base and facts, picking from a list, what a part is on the shelf, watts to outcome, the branches of a plan, where the lines of a drawing run, the order of the bench and how results, histories and records of others read are free.',
      severity: 'error',
      from: { path: '^src/web/', pathNot: '\\.worker\\.ts$' },
      to: {
        path: '^src/(engines|machine|blueprint|bench|store|server|cli)/',
        pathNot:
          '^src/(blueprint/(narrow|signs|entry|part-kind-of)|machine/(scale|undertaking|branches|drawing/[a-z]+)|bench/(next-hour|words|shelf/part-history|adverts/advert-history|open-data/record-words))\\.ts$',
        dependencyTypesNot: ['type-only'],
      },
    },
  ],
  options: {
    doNotFollow: { path: 'node_modules' },
    tsConfig: { fileName: 'tsconfig.json' },
    tsPreCompilationDeps: true,
    enhancedResolveOptions: { exportsFields: ['exports'], conditionNames: ['import', 'types', 'node'] },
  },
}
