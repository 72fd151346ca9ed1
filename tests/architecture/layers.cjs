/**
 * Which folder may import what. One rule per folder, each with a violation planted in ./planted that it must catch.
 *
 * A rule says what a folder may import; everything else is refused. Paths are relative to the project.
 */

/** A published package, wherever it is installed. */
const pack = (...names) => `(^|/)node_modules/(@types/)?(${names.join('|')})/`

/** Everything of Node itself, or the named modules of it. */
const NODE =
  '^(node:)?(assert|child_process|crypto|events|fs|http|module|net|os|path|stream|timers|url|util|worker_threads|zlib|buffer|perf_hooks)(/|$)'
const nodeOnly = (...names) => `^(node:)?(${names.join('|')})(/|$)`

const may = (name, from, allowed, comment) => ({
  name,
  comment,
  severity: 'error',
  from: { path: from },
  to: { pathNot: allowed },
})

module.exports = {
  forbidden: [
    may(
      'domain-imports-only-itself',
      '^db/domain/',
      ['^db/domain/', '^db/messages/message\\.ts$'],
      'The rules of the trade are pure: no package, no Node, no clock, no other layer; what they say is a message.',
    ),
    may(
      'messages-know-domain-and-the-formatter',
      '^db/messages/',
      ['^db/(messages|domain)/', pack('intl-messageformat', '@formatjs/[^/]+')],
      'Catalogues and their telling: no table, no service, no screen.',
    ),
    {
      name: 'no-message-is-told-by-rules-or-services',
      comment: 'They answer codes and figures; windows, paper and the command line choose the language.',
      severity: 'error',
      from: { path: '^db/(domain|contract|queries|schema|services/(?!print|exchange|run-operation))/?' },
      to: { path: '^db/messages/', pathNot: '^db/messages/(message|languages)\\.ts$' },
    },
    may(
      'contract-knows-domain-and-zod',
      '^db/contract/',
      ['^db/(contract|domain|messages)/', pack('zod')],
      'The contract says what may be asked; it does not know how it is answered.',
    ),
    may(
      'schema-knows-domain-and-drizzle',
      '^db/schema/',
      ['^db/(schema|domain)/', '^db/messages/languages\\.ts$', pack('drizzle-orm')],
      'Tables only.',
    ),
    may(
      'queries-know-schema',
      '^db/queries/',
      [
        '^db/(queries|schema|domain|contract|messages)/',
        '^db/migrations/connection\\.ts$',
        pack('drizzle-orm', 'better-sqlite3'),
      ],
      'Reads and writes without rules: no service, no file, no paper.',
    ),
    {
      name: 'queries-know-contract-as-types',
      comment: 'A query may shape its answer as the contract says, but checks nothing at run time.',
      severity: 'error',
      from: { path: '^db/queries/' },
      to: { path: '^db/contract/', dependencyTypesNot: ['type-only'] },
    },
    may(
      'migrations-know-schema-and-files',
      '^db/migrations/',
      ['^db/(migrations|schema|domain|contract|messages)/', pack('drizzle-orm', 'better-sqlite3'), NODE],
      'Opening a file: no use case, no screen.',
    ),
    may(
      'services-gather-decide-write',
      '^db/services/',
      [
        '^db/(services|contract|domain|messages|queries|schema|migrations|paper|exchange|reference)/',
        '^db/solver/solve\\.ts$',
        pack('drizzle-orm', 'zod'),
        NODE,
      ],
      'Use cases know the book and the rules, and nothing of windows, transports or drivers.',
    ),
    may(
      'paper-is-pure',
      '^db/paper/',
      [
        '^db/(paper|domain|contract|messages)/',
        pack('pdf-lib', '@cantoo/[^/]+', 'bwip-js', 'bidi-js', 'source-sans', 'html-entities'),
        nodeOnly('fs', 'module', 'path', 'url'),
      ],
      'Data in, bytes out; Node only to read the fonts that are shipped.',
    ),
    {
      name: 'drawing-knows-no-document',
      comment: 'What every document is drawn with knows none of them.',
      severity: 'error',
      from: { path: '^db/paper/drawing/' },
      to: { path: '^db/paper/', pathNot: '^db/paper/drawing/' },
    },
    may(
      'solver-knows-no-seed',
      '^db/solver/',
      ['^db/solver/', pack('highs'), nodeOnly('path', 'url', 'worker_threads')],
      'A programme in, its solution out; what it means is the domain’s.',
    ),
    may(
      'exchange-is-pure',
      '^db/exchange/',
      [
        '^db/(exchange|domain|messages|reference)/',
        pack('papaparse', 'fflate', 'saxen', 'write-excel-file', 'html-entities'),
      ],
      'Files of other programs: text in, rows out, and back; no book, no disk.',
    ),
    {
      name: 'paper-knows-contract-as-types',
      comment: 'A document is drawn from data that was checked before.',
      severity: 'error',
      from: { path: '^db/paper/' },
      to: { path: '^db/contract/', dependencyTypesNot: ['type-only'] },
    },
    may(
      'demo-data-goes-through-services',
      '^demo-data/',
      [
        '^demo-data/',
        '^db/(services|contract|domain|messages)/',
        '^db/migrations/open-file\\.ts$',
        pack('papaparse', 'zod'),
        NODE,
      ],
      'The demonstration obeys the rules of every other collection.',
    ),
    may(
      'host-runs-services',
      '^electron/host/',
      [
        '^electron/host/',
        '^db/(services|contract|messages|migrations)/',
        '^demo-data/load-demo\\.ts$',
        pack('zod'),
        NODE,
      ],
      'The host calls services; it holds no rule and reads no table.',
    ),
    may(
      'loopback-knows-host',
      '^electron/loopback/',
      ['^electron/(loopback|host)/', '^db/(contract|messages)/', NODE],
      'A transport: everything goes through the host.',
    ),
    may(
      'command-line-knows-host',
      '^electron/command-line/',
      [
        '^electron/(command-line|host|loopback)/',
        '^db/(contract|messages)/',
        '^db/migrations/held-files',
        pack('zod'),
        NODE,
      ],
      'A transport: everything goes through the host; files of its own are removed as everywhere.',
    ),
    may(
      'main-knows-host',
      '^electron/main/',
      ['^electron/(main|host)/', '^db/(contract|messages)/', pack('electron'), NODE],
      'A transport: everything goes through the host.',
    ),
    may(
      'preload-knows-electron',
      '^electron/preload/',
      ['^electron/preload/', '^db/contract/', pack('electron')],
      'The preload is sandboxed: one function, no code of ours.',
    ),
    {
      name: 'preload-knows-contract-as-types',
      comment: 'A sandboxed preload is one file and loads nothing at run time but electron.',
      severity: 'error',
      from: { path: '^electron/preload/' },
      to: { pathNot: [pack('electron')], dependencyTypesNot: ['type-only'] },
    },
    may(
      'renderer-knows-the-contract',
      '^renderer/',
      [
        '^renderer/',
        '^db/(contract|domain|messages)/',
        '(^|/)node_modules/(?!(electron|better-sqlite3|drizzle-orm)/)',
      ],
      'A screen asks through the contract: no table, no service, no Node, no Electron.',
    ),
    {
      name: 'screens-are-closed-to-each-other',
      comment: 'What two screens need lives in renderer/shared.',
      severity: 'error',
      from: { path: '^renderer/screens/([^/]+)/' },
      to: { path: '^renderer/screens/', pathNot: '^renderer/screens/$1/' },
    },
    {
      name: 'renderer-shared-is-below-screens',
      comment: 'Shared parts do not know who uses them.',
      severity: 'error',
      from: { path: '^renderer/shared/' },
      to: { path: '^renderer/(screens|app)/' },
    },
    {
      name: 'screens-are-below-the-shell',
      comment: 'The shell knows the screens, not the other way.',
      severity: 'error',
      from: { path: '^renderer/screens/' },
      to: { path: '^renderer/app/' },
    },
    {
      name: 'only-main-and-preload-know-electron',
      comment: "Electron's package starts a download when loaded outside Electron.",
      severity: 'error',
      from: { pathNot: ['^electron/(main|preload)/', '^tests/'] },
      to: { path: pack('electron') },
    },
    {
      name: 'nothing-imports-tests',
      comment: 'Product code does not lean on test code.',
      severity: 'error',
      from: { pathNot: ['^tests/', '^[^/]+\\.config\\.ts$'] },
      to: { path: '^tests/' },
    },
    {
      name: 'no-circle',
      comment: 'Two files that need each other at run time are one file, or three.',
      severity: 'error',
      from: {},
      to: { circular: true, viaOnly: { dependencyTypesNot: ['type-only'] } },
    },
    {
      name: 'rooms-without-circles',
      comment:
        'A room of the services leans only on rooms that do not lean on it; what several need stands in the book.',
      severity: 'error',
      scope: 'folder',
      from: { path: '^db/services/[^/]+$' },
      to: { path: '^db/services/[^/]+$', circular: true },
    },
    {
      name: 'every-import-is-found',
      comment: 'An import that cannot be followed cannot be checked.',
      severity: 'error',
      from: {},
      to: { couldNotResolve: true },
    },
  ],
  options: {
    doNotFollow: { path: 'node_modules' },
    exclude: { path: '^(tests/architecture/planted|dist)/' },
    tsPreCompilationDeps: true,
    enhancedResolveOptions: {
      exportsFields: ['exports'],
      conditionNames: ['import', 'require', 'node', 'default', 'types'],
    },
  },
}
