// Layer rules. Each layer lists everything it may import; anything else is an error.
// Order matters only for reading: lowest layer first. Paths are anchored regular expressions.
const UNITS = '^shared/(units|result)/'
const NODE_MODULES = 'node_modules/'
const npm = (...names) => names.map((n) => `(^|/)node_modules/${n}(/|$)`)

/** @type {Array<{layer: string, from: string, may: string[]}>} */
const layers = [
  { layer: 'units', from: '^shared/units/', may: ['^shared/result/', ...npm('temporal-polyfill')] },
  { layer: 'result', from: '^shared/result/', may: [] },
  { layer: 'document', from: '^shared/document/', may: [UNITS, ...npm('zod')] },
  { layer: 'packing', from: '^shared/packing/', may: [UNITS] },
  { layer: 'climate', from: '^shared/climate/', may: [UNITS, ...npm('suncalc', 'astronomy-engine', 'psychrolib')] },
  { layer: 'checklist', from: '^shared/checklist/', may: [UNITS, ...npm('json-logic-engine')] }, // or the evaluator chosen
  { layer: 'plan', from: '^shared/plan/', may: [UNITS, '^shared/(document|packing|climate|checklist)/index\\.ts$'] },
  { layer: 'host', from: '^shared/host/', may: [UNITS, '^shared/(document|plan)/index\\.ts$', ...npm('zod')] },

  { layer: 'text', from: '^shared/text/', may: [UNITS] },
  { layer: 'cards', from: '^shared/cards/', may: [UNITS, '^shared/text/', '^shared/(document|plan)/index\\.ts$'] },

  { layer: 'renderer-styles', from: '^renderer/styles/', may: [] },
  {
    layer: 'renderer-ui',
    from: '^renderer/ui/',
    may: [UNITS, '^shared/text/', '^renderer/styles/', ...npm('vue', 'vue-i18n', 'reka-ui')],
  },
  {
    layer: 'renderer-scene',
    from: '^renderer/scene/',
    may: [UNITS, '^shared/text/', '^shared/plan/index\\.ts$', '^renderer/styles/', ...npm('three', '@types/three')],
  },
  { layer: 'renderer-workers', from: '^renderer/workers/', may: [UNITS, '^shared/(plan|document)/index\\.ts$'] },
  { layer: 'renderer-host', from: '^renderer/host/', may: [UNITS, '^shared/host/'] },
  {
    layer: 'renderer-stores',
    from: '^renderer/stores/',
    may: [UNITS, '^shared/(document|plan|host)/index\\.ts$', '^renderer/(host|workers)/', ...npm('vue', 'pinia')],
  },
  {
    layer: 'renderer-features',
    from: '^renderer/features/([^/]+)/',
    may: [
      UNITS,
      '^shared/(document|plan)/index\\.ts$',
      '^shared/(text|cards)/',
      '^renderer/(stores|ui|scene|styles)/',
      '^renderer/features/$1/',
      ...npm('vue', 'pinia', 'vue-i18n'),
    ],
  },
  {
    layer: 'renderer-app',
    from: '^renderer/app/',
    may: [
      '^renderer/',
      UNITS,
      '^shared/text/',
      '^shared/(document|plan|host)/index\\.ts$',
      ...npm('vue', 'pinia', 'vue-i18n', 'reka-ui'),
    ],
  },

  { layer: 'electron-preload', from: '^electron/preload/', may: ['^shared/host/operations\\.ts$', ...npm('electron')] },
  {
    layer: 'electron-files',
    from: '^electron/files/',
    may: [
      UNITS,
      '^shared/(text|cards)/',
      '^shared/(document|host)/index\\.ts$',
      ...npm('pdfmake', '@types/pdfmake'),
      '^pdfmake/interfaces$',
    ],
  },
  { layer: 'electron-web', from: '^electron/web/', may: [UNITS, '^shared/host/', '^electron/files/'] },
  {
    layer: 'electron-command',
    from: '^electron/command/',
    may: [UNITS, '^shared/(host|text|cards)/', '^electron/files/', ...npm('pdfmake')],
  },
  { layer: 'electron-start', from: '^electron/start/', may: [] }, // launcher: Node only, finds Electron or starts the web host
  { layer: 'electron-package', from: '^electron/package/', may: [NODE_MODULES] },
  {
    layer: 'electron-main',
    from: '^electron/main/',
    may: [UNITS, '^shared/host/', '^electron/files/', ...npm('electron')],
  },
]

// `package` holds the build's own programs: they run in Node and may use what only builds need.
const NODE_ALLOWED = '^electron/(files|web|command|start|main|package)/'
const BUILD_FILES = '(^electron/package/|vite\\.config\\.ts$)'
// Types only: the package keeps them under @types.
const TYPES_ELSEWHERE = '^pdfmake/interfaces$'

module.exports = {
  forbidden: [
    ...layers.map(({ layer, from, may }) => ({
      name: `layer:${layer}`,
      severity: 'error',
      comment: `${layer} may import only: ${may.join(', ') || 'nothing'}`,
      from: { path: from },
      to: { pathNot: [from.replace(/\(\[\^\/\]\+\)/, '$1'), ...may], dependencyTypesNot: ['core'] },
    })),
    {
      name: 'node-only-in-hosts',
      severity: 'error',
      comment: 'Node built-ins belong to electron/{files,web,command,start,main}',
      from: { pathNot: [NODE_ALLOWED, BUILD_FILES, '^test/'] },
      to: { dependencyTypes: ['core'] },
    },
    {
      name: 'every-file-has-a-layer',
      severity: 'error',
      comment: 'A file outside the known folders has no rules',
      from: { path: '^(shared|renderer|electron)/', pathNot: [...layers.map((l) => l.from), BUILD_FILES] },
      to: {},
    },
    { name: 'no-cycles', severity: 'error', comment: 'Data flows one way', from: {}, to: { circular: true } },
    {
      name: 'tests-are-leaves',
      severity: 'error',
      comment: 'Nothing ships test code',
      from: { pathNot: '^test/' },
      to: { path: '^test/' },
    },
    {
      name: 'no-unresolved',
      severity: 'error',
      comment: 'Import must resolve',
      from: {},
      to: { couldNotResolve: true, pathNot: TYPES_ELSEWHERE },
    },
    {
      name: 'no-dev-packages-in-product',
      severity: 'error',
      comment: 'Product code imports only shipped packages',
      from: { path: '^(shared|renderer|electron)/', pathNot: BUILD_FILES },
      to: { dependencyTypes: ['npm-dev'], pathNot: npm('electron', '@types/.*') },
    },
  ],
  options: {
    doNotFollow: { path: NODE_MODULES },
    tsPreCompilationDeps: true,
    tsConfig: { fileName: 'tsconfig.json' },
    enhancedResolveOptions: {
      exportsFields: ['exports'],
      conditionNames: ['import', 'types', 'default'],
      extensions: ['.ts', '.vue', '.js', '.json'],
    },
  },
}
