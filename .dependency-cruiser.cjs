/**
 * Import rules, made from the level table of DEVELOPERS.md: a room imports only rooms of lower levels,
 * siblings never import each other, type imports count too. Levels 0 to 9 know no DOM, React, I/O.
 */
const LEVELS = [
  ['measure'],
  ['geometry', 'check'],
  ['drawing', 'materials'],
  ['bed'],
  ['design'],
  ['layout', 'lettering'],
  ['joinery'],
  ['cutting', 'finish', 'fold', 'load', 'fastening', 'marks', 'patterns'],
  ['plan'],
  ['output'],
  ['editor', 'command'],
];

const rooms = LEVELS.flatMap((names, level) => names.map((name) => ({ name, level })));
const pure = rooms.filter((r) => r.level <= 9).map((r) => r.name);

const levelRules = rooms.map(({ name, level }) => ({
  name: `${name}-imports-only-lower-rooms`,
  comment:
    `src/${name} is at level ${level}: it may import only lower levels. If it needs a sibling's figure, ` +
    'let plan/ pass it as an argument; if it needs a shape that two rooms share, move that shape down.',
  severity: 'error',
  from: { path: `^src/${name}/` },
  to: {
    path: `^src/(${rooms
      .filter((r) => r.level >= level && r.name !== name)
      .map((r) => r.name)
      .join('|')})/`,
  },
}));

/** Runtime packages that each pure room may use; everything else is refused. */
const PACKAGES = {
  geometry: ['clipper2-ts'],
  design: ['zod'],
  lettering: ['fflate', 'opentype.js'],
  output: ['@cantoo/pdf-lib', 'bidi-js'],
};

const packageRules = pure.map((name) => ({
  name: `${name}-packages`,
  comment: `src/${name} is pure: no DOM, React, I/O or clock, and only the packages listed for it.`,
  severity: 'error',
  from: { path: `^src/${name}/` },
  to: {
    dependencyTypesNot: ['local', 'undetermined'],
    pathNot: (PACKAGES[name] ?? []).map((p) => `node_modules/(@types/)?${p.replace('.', '\\.')}/`).concat('^src/'),
  },
}));

module.exports = {
  forbidden: [
    ...levelRules.filter((r) => r.to.path !== '^src/()/'),
    ...packageRules,
    {
      name: 'clip-alone-imports-the-polygon-library',
      comment: 'geometry/clip.ts is the only door to the polygon library, so that its traps are met in one place.',
      severity: 'error',
      from: { path: '^src/', pathNot: '^src/geometry/clip\\.ts$' },
      to: { path: 'node_modules/clipper2-ts/' },
    },
    {
      name: 'no-cycles',
      comment: 'A cycle means that two files are one file.',
      severity: 'error',
      from: {},
      to: { circular: true },
    },
    {
      name: 'src-never-imports-tests',
      severity: 'error',
      from: { path: '^src/' },
      to: { path: '^tests/' },
    },
  ],
  options: {
    doNotFollow: { path: 'node_modules' },
    tsPreCompilationDeps: true,
    tsConfig: { fileName: 'tsconfig.json' },
    enhancedResolveOptions: {
      exportsFields: ['exports'],
      conditionNames: ['import', 'require', 'node', 'default', 'types'],
      extensions: ['.ts', '.tsx', '.js', '.mjs', '.json', '.d.ts'],
    },
  },
};
