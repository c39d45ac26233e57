/** The floors of the house, as rules for dependency-cruiser: arrows point down only. */
const floor0 = ['result', 'units', 'numerics', 'money', 'text', 'operation'];
const floor1 = ['instrument', 'materials', 'law', 'sources'];
const floor2 = ['strings', 'belly', 'action', 'tone', 'sound', 'tuning', 'room', 'climate'];
const floor3a = ['workshop', 'plot', 'report', 'recording'];
const floor3b = ['estimate', 'proof', 'order', 'sheets', 'catalogue'];
const floor4 = ['store', 'files', 'jobs'];
const below2 = [...floor0, ...floor1];
const below3 = [...below2, ...floor2];
const below3b = [...below3, ...floor3a];
const below4 = [...below3b, ...floor3b];

const each = (modules, may) => Object.fromEntries(modules.map((name) => [name, may]));

/** Module → the modules it may use. What is not named here does not exist yet. */
const mayUse = {
  result: [],
  units: ['result'],
  numerics: ['result', 'units'],
  money: ['result', 'units', 'numerics'],
  text: ['result', 'units', 'numerics', 'money'],
  operation: ['result', 'units', 'numerics', 'money', 'text'],
  ...each(floor1, floor0),
  ...each(floor2, below2),
  sound: [...below2, 'strings'],
  tuning: [...below2, 'strings'],
  ...each(floor3a, below3),
  report: [...below3, 'plot'],
  ...each(floor3b, below3b),
  catalogue: [...below3b, 'estimate'],
  ...each(floor4, below4),
  jobs: [...below4, 'store'],
  server: [...below4, ...floor4],
  cli: [...below4, ...floor4, 'server'],
  web: below4,
};

const floorRules = Object.entries(mayUse).map(([name, allowed]) => ({
  name: `floor-of-${name}`,
  severity: 'error',
  from: { path: `^src/${name}/` },
  to: { path: '^src/', pathNot: `^src/(${[name, ...allowed].join('|')})/` },
}));

const pure = `^src/(${below4.join('|')})/`;

module.exports = {
  forbidden: [
    ...floorRules,
    {
      name: 'known-module',
      comment: 'A new module is named in the floors first.',
      severity: 'error',
      from: { path: '^src/', pathNot: `^src/(${Object.keys(mayUse).join('|')})/` },
      to: {},
    },
    {
      name: 'one-door',
      comment: 'Another module is entered by its index.ts alone.',
      severity: 'error',
      from: { path: '^src/([^/]+)/' },
      to: { path: '^src/', pathNot: ['^src/$1/', '^src/[^/]+/index\\.ts$'] },
    },
    {
      name: 'no-relative-across',
      comment: 'Another module is named as #module, so that its door is the only way in.',
      severity: 'error',
      from: { path: '^src/([^/]+)/' },
      to: { path: '^src/', pathNot: '^src/$1/', dependencyTypesNot: ['aliased-subpath-import'] },
    },
    {
      name: 'no-own-door',
      comment: 'Inside a module files name each other; only a test may come in by the door.',
      severity: 'error',
      from: { path: '^src/([^/]+)/', pathNot: '\\.test\\.tsx?$' },
      to: { path: '^src/$1/index\\.ts$' },
    },
    { name: 'no-inner-index', severity: 'error', from: {}, to: { path: '^src/[^/]+/.+/index\\.tsx?$' } },
    { name: 'no-circle', severity: 'error', from: {}, to: { circular: true } },
    { name: 'resolves', severity: 'error', from: {}, to: { couldNotResolve: true } },
    {
      name: 'pure-floors',
      comment: 'Floors 0 to 3 read no clock, file or network: nothing of Node.',
      severity: 'error',
      from: { path: pure, pathNot: '(\\.test\\.ts$|/testing/)' },
      to: { dependencyTypes: ['core'] },
    },
    {
      name: 'no-test-in-program',
      severity: 'error',
      from: { path: '^src/', pathNot: '(\\.test\\.tsx?$|/testing/)' },
      to: { path: '(\\.test\\.tsx?$|/testing/)' },
    },
  ],
  options: {
    tsPreCompilationDeps: true,
    tsConfig: { fileName: 'tsconfig.json' },
    doNotFollow: { path: 'node_modules' },
    exclude: { path: '(^dist/|\\.css$)' },
    enhancedResolveOptions: { conditionNames: ['wrestplank', 'import', 'node', 'default', 'types'], exportsFields: ['exports'], extensions: ['.ts', '.tsx', '.js', '.mjs', '.cjs', '.json'] },
  },
};
