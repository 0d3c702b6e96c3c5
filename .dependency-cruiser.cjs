// The arrows of the house: who may import whom (DEVELOPERS.md).
const only = (name, from, allowed) => ({
  name,
  severity: 'error',
  from: { path: from },
  to: { pathNot: allowed },
});

module.exports = {
  forbidden: [
    {
      name: 'no-cycles',
      severity: 'error',
      from: {},
      to: { circular: true },
    },
    { name: 'nothing-unresolved', severity: 'error', from: {}, to: { couldNotResolve: true } },
    only('core-is-pure', '^core/', ['^core/']),
    only('templates-know-core', '^templates/', [
      '^templates/',
      '^core/',
      '^node:',
      '^(fs|path|url|module)',
      'node_modules/(@types/)?pdfmake/',
      'node_modules/fontkit/',
    ]),
    only('contract-knows-core', '^electron/contract/', [
      '^electron/contract/',
      '^core/',
      'node_modules/zod/',
    ]),
    {
      name: 'contract-has-rooms',
      severity: 'error',
      from: {},
      to: {
        path: '^electron/contract/(?!(contract|callNames|errors|fields|limits|records|results)\\.ts)[^/]+$',
      },
    },
    only('service-without-electron', '^electron/service/', [
      '^electron/(service|contract)/',
      '^core/',
      '^templates/',
      '^(node:)?(fs|path|os|url|crypto|stream|util|worker_threads|zlib)',
      'node_modules/(better-sqlite3|@types/better-sqlite3|kysely|zod|papaparse|yazl|yauzl|saxes|ical-generator|nodemailer|age-encryption|tar-stream|@types/papaparse|@types/yazl|@types/yauzl|@types/tar-stream)/',
    ]),
    only('launch-is-plain', '^electron/(launch/|start\\.mjs$)', [
      '^electron/(launch/|loopback/main\\.mjs$)',
      '^(node:)?(fs|path|os|url|util|module|child_process)',
    ]),
    only('loopback-knows-service', '^electron/loopback/', [
      '^electron/(loopback|launch|service|contract)/',
      '^(node:)?(fs|path|os|url|crypto|stream|http|net|child_process)',
      'node_modules/(hono|@hono)/',
    ]),
    only('shell-knows-service', '^electron/shell/', [
      '^electron/(shell|service|contract)/',
      '^(node:)?(fs|path|os|url|crypto|stream)',
      'node_modules/electron/',
    ]),
    {
      name: 'renderer-knows-core-and-contract',
      severity: 'error',
      from: { path: '^renderer/' },
      to: {
        path: [
          '^(electron/(service|shell|loopback|launch)|templates)/',
          'node_modules/(electron|hono|@hono|better-sqlite3|kysely|pdfmake)/',
        ],
      },
    },
    {
      name: 'renderer-without-node',
      severity: 'error',
      from: { path: '^renderer/' },
      to: { dependencyTypes: ['core'] },
    },
    {
      name: 'nobody-imports-tests',
      severity: 'error',
      from: { pathNot: '^tests/' },
      to: { path: '^tests/' },
    },
  ],
  options: {
    doNotFollow: { path: 'node_modules' },
    tsPreCompilationDeps: true,
    enhancedResolveOptions: {
      exportsFields: ['exports'],
      conditionNames: ['import', 'types', 'default'],
    },
    tsConfig: { fileName: 'tsconfig.base.json' },
  },
};
