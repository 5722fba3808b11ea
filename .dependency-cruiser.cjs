/**
 * Import rules, made from the level table of DEVELOPERS.md: a room imports only rooms of lower levels,
 * siblings never import each other, type imports count too. Levels 0 to 11 know no DOM, React, I/O.
 */
const LEVELS = [
  ['list'],
  ['measure'],
  ['geometry', 'check'],
  ['drawing', 'materials'],
  ['bed'],
  ['design'],
  ['layout', 'lettering'],
  ['joinery'],
  ['cutting', 'finish', 'fold', 'load', 'fastening', 'marks', 'patterns'],
  ['job'],
  ['plan'],
  ['output'],
  ['editor', 'command'],
];

const rooms = LEVELS.flatMap((names, level) => names.map((name) => ({ name, level })));
const pure = rooms.filter((r) => r.level <= 11).map((r) => r.name);

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

/** The rooms of the editor, likewise; `main.tsx` wires them. Then the rooms of its panes, within theirs. */
const EDITOR = [
  ['words'],
  ['shipped'],
  ['document', 'planning'],
  ['state'],
  ['edit', 'control', 'kept'],
  ['drawing', 'photo', 'frame'],
  ['gesture'],
  ['canvas', 'pane', 'saw'],
  ['shell'],
];
const PANES = [
  ['facts', 'beside'],
  ['swing', 'part'],
  ['bed', 'checks', 'fixing', 'layout', 'lettering', 'pages', 'paint', 'parts', 'wood'],
];

/** A room inside of a folder imports lower rooms of it only; what stands in the folder itself imports any. */
const inside = (folder, levels) =>
  levels.flatMap((names, level) =>
    names.map((name) => ({
      name: `${folder}-${name}-imports-only-lower-rooms`,
      comment: `src/${folder}/${name} may import only lower rooms of src/${folder}: see its level table in DEVELOPERS.md.`,
      severity: 'error',
      from: { path: `^src/${folder}/${name}/` },
      to: {
        path: `^src/${folder}/`,
        pathNot: `^src/${folder}/(${[name, ...levels.slice(0, level).flat(), 'style'].join('|')})/`,
      },
    })),
  );

/** Rooms of the editor that are plain functions of values: tested in Node, drawn by nothing. */
const PLAIN = ['document', 'planning', 'edit', 'drawing', 'gesture'];

/** Runtime packages that each pure room may use; everything else is refused. */
const PACKAGES = {
  geometry: ['clipper2-ts'],
  design: ['zod'],
  lettering: ['bidi-js', 'brotli', 'fflate', 'opentype.js', 'svg-pathdata'],
  output: ['@cantoo/pdf-lib', 'zod'],
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
    ...inside('editor', EDITOR),
    ...inside('editor/pane', PANES),
    {
      name: 'plain-rooms-of-the-editor',
      comment: 'What is done and drawn by hand knows neither React nor Konva, so that tests call it in Node.',
      severity: 'error',
      from: { path: `^src/editor/(${PLAIN.join('|')})/` },
      to: { path: 'node_modules/(react|react-dom|konva|react-konva)/' },
    },
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
