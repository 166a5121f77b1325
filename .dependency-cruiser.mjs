/**
 * Which package belongs to which layer. A new one must be put here (a test compares this with package.json), and a
 * layer may import only its own.
 */
export const packages = {
  // Pure computation only: nothing that reads a clock, a file or the network.
  domain: ['intl-messageformat', 'libphonenumber-js', 'rrule'],
  store: ['@prisma/adapter-better-sqlite3', '@prisma/client', '@prisma/driver-adapter-utils'].concat([
    '@prisma/schema-engine-wasm',
    'better-sqlite3',
    'sharp',
  ]),
  services: ['papaparse', 'qrcode', 'read-excel-file', 'zod'],
  documents: ['bidi-js', 'fontkit', 'linebreak', 'pdfkit', 'qrcode'],
  outbox: ['ical-generator', 'nodemailer'],
  api: ['@trpc/server', 'hono', 'zod'],
  web: ['@hono/node-server', 'hono'],
  desktop: ['electron', 'temporal-polyfill'],
  app: ['@fontsource-variable/inter', '@mantine/core', '@mantine/dates', '@mantine/hooks']
    .concat(['@mantine/modals', '@mantine/notifications', '@mantine/spotlight', '@tabler/icons-react'])
    .concat(['@tanstack/react-query', '@tanstack/react-router', '@trpc/client', '@trpc/tanstack-react-query'])
    .concat(['dayjs', 'react', 'react-dom', 'signature_pad', 'temporal-polyfill']),
  // What builds the app; main/hosts/build.ts and the configurations use it.
  build: ['@vitejs/plugin-react', 'electron-builder', 'node', 'prisma', 'typescript', 'vite'],
  tests: [
    '@axe-core/playwright',
    '@biomejs/biome',
    '@playwright/test',
    '@stryker-mutator/core',
    '@stryker-mutator/instrumenter',
    '@stryker-mutator/vitest-runner',
    '@swc/core',
    'dependency-cruiser',
  ].concat([
    'fast-check',
    'highs',
    'ical.js',
    'knip',
    'minizinc',
    'oxc-parser',
    'pdfjs-dist',
    'smtp-server',
    'vitest',
    'xmllint-wasm',
  ]),
}

const inPackages = names => `^node_modules/(@types/)?(${names.join('|')})(/|$)`
const npm = ['npm', 'npm-dev', 'npm-optional', 'npm-peer', 'npm-no-pkg', 'npm-unknown']
const buildFiles = '^(app/vite\\.config\\.ts|main/hosts/(build|buildDesktop|dev)\\.ts)$'

/** Layer `name` may import of the packages only what is listed for it. */
const onlyItsPackages = (name, path, names, except = '^$') => ({
  name: `packages-of-${name}`,
  comment: `A package used in ${name} must be listed for it in this file. Is the layer right? Then list it; else move the code.`,
  severity: 'error',
  from: { path, pathNot: except },
  to: { dependencyTypes: npm, pathNot: names.length > 0 ? inPackages(names) : '^$' },
})

/** Layer `name` may import of main/ only itself and what `allowed` matches. */
const onlyDown = (name, allowed, comment) => ({
  name: `${name}-imports-down`,
  comment,
  severity: 'error',
  from: { path: `^main/${name}/` },
  to: { path: '^(main|app|prisma)/', pathNot: `^main/(${[name, ...allowed].join('|')})/` },
})

/** The rooms of the services, from the ground up: a room may use those named before it, never those after. */
const rooms = [
  'desk',
  'history',
  'cure',
  'shelf',
  'floor',
  'prices',
  'effort',
  'setUp',
  'records',
  'upkeep',
  'imports',
  'intake',
  'job',
  'booking',
  'waiting',
  'money',
  'board',
  'dayPlan',
  'mend',
  'morning',
  'applied',
  'reminders',
  'undo',
  'backup',
  'diagnostics',
  'leaving',
  'demo',
]

/** Screens whose pieces another screen may show, each only in those named. Everything else that two share is a part. */
const shownIn = {
  board: ['book', 'job'],
  book: ['plan', 'job', 'customers', 'upkeep', 'car'],
  upkeep: ['car', 'customers'],
  shelf: ['closeOfDay'],
  closeOfDay: ['job'],
}

/** @type {import('dependency-cruiser').IConfiguration} */
export default {
  forbidden: [
    onlyDown(
      'domain',
      [],
      'The domain is the ground: it imports nothing above it. Pass what it needs as an argument.',
    ),
    onlyDown('store', ['domain'], 'The store keeps; it knows no use case. Move the decision to a service.'),
    onlyDown('documents', ['domain'], 'A document is drawn from what it is given. Let the service load it.'),
    onlyDown('outbox', ['domain'], 'The outbox sends what it is given. Let the service load and save.'),
    onlyDown(
      'services',
      ['domain', 'store', 'documents', 'outbox'],
      'A use case does not know who asks: nothing of the api or the hosts. Pass it in through the Desk.',
    ),
    onlyDown(
      'api',
      ['domain', 'services'],
      'The api checks input and calls a service; it never touches the store or draws a document itself.',
    ),
    ...rooms.map((room, i) => ({
      name: `services-${room}-looks-down`,
      comment: `The room ${room} may use only the rooms below it (${rooms.slice(0, i).join(', ') || 'none'}), for types too. Move what both need down, or the use case up.`,
      severity: 'error',
      from: { path: `^main/services/${room}/` },
      to: { path: '^main/services/', pathNot: `^main/services/(${rooms.slice(0, i + 1).join('|')})/` },
    })),
    {
      name: 'screens-apart',
      comment:
        'A screen stands alone. Move what two screens share to app/parts, or name the pair in `shownIn` where one shows a piece of the other.',
      severity: 'error',
      from: { path: '^app/screens/([^/]+)/' },
      to: {
        path: '^app/screens/',
        pathNot: ['^app/screens/$1/', `^app/screens/(${Object.keys(shownIn).join('|')})/`],
      },
    },
    ...Object.entries(shownIn).map(([screen, others]) => ({
      name: `screen-${screen}-shown`,
      comment: `Pieces of ${screen} are shown in ${others.join(' and ')} only: move what you need to app/parts.`,
      severity: 'error',
      from: { path: '^app/screens/', pathNot: `^app/screens/(${[screen, ...others].join('|')})/` },
      to: { path: `^app/screens/${screen}/` },
    })),
    {
      name: 'services-in-rooms',
      comment: 'A service lives in a room: put the file into the folder of its area.',
      severity: 'error',
      from: {},
      to: { path: '^main/services/[^/]+$' },
    },
    {
      name: 'domain-by-its-face',
      comment:
        'From outside, an area of the domain is used through its index.ts (or words.ts, for the screens). Export what you need there.',
      severity: 'error',
      from: { path: '^(main|app)/', pathNot: '^main/domain/' },
      to: { path: '^main/domain/[^/]+/', pathNot: '/(index|words)\\.ts$' },
    },
    {
      name: 'app-takes-types-and-domain',
      comment:
        'The screens run in a browser: of main/ they may use the domain, and the api and the views as types only.',
      severity: 'error',
      from: { path: '^app/' },
      to: {
        path: '^(main|prisma)/',
        pathNot: '^main/(domain|api)/',
      },
    },
    {
      name: 'app-takes-api-as-types',
      comment: 'Write `import type`: the api and the services would pull the server into the browser.',
      severity: 'error',
      from: { path: '^app/' },
      to: { path: '^main/(api|services)/', dependencyTypesNot: ['type-only'] },
    },
    {
      name: 'app-has-no-node',
      comment: 'A browser has no node:* modules.',
      severity: 'error',
      from: { path: '^app/', pathNot: buildFiles },
      to: { dependencyTypes: ['core'] },
    },
    {
      name: 'domain-is-pure',
      comment: 'The domain does no I/O: no node:* module. Let a service read, and hand over what it read.',
      severity: 'error',
      from: { path: '^main/domain/' },
      to: { dependencyTypes: ['core'] },
    },
    {
      name: 'rrule-in-upkeep',
      comment:
        'rrule counts in floating time dressed as UTC; only the wrapper in upkeep knows how to convert it.',
      severity: 'error',
      from: { path: '^main/domain/', pathNot: '^main/domain/upkeep/recurrence/library\\.ts$' },
      to: { path: '^node_modules/rrule/' },
    },
    {
      name: 'large-packages-late',
      comment: 'Some 60 MB that a start goes without: write `await import(...)` where it is needed.',
      severity: 'error',
      from: { path: '^main/', pathNot: 'Thread\\.ts$' },
      to: {
        path: '^node_modules/(fontkit|nodemailer|pdfkit|read-excel-file|sharp)/',
        dynamic: false,
        dependencyTypesNot: ['type-only'],
      },
    },
    {
      name: 'prisma-in-store',
      comment: 'Only main/store sees Prisma and SQLite, so that the database can change behind it.',
      severity: 'error',
      from: { path: '^(main|app)/', pathNot: '^main/store/' },
      to: { path: ['^main/store/generated/', '^node_modules/(@prisma|prisma|better-sqlite3)/'] },
    },
    {
      name: 'electron-in-desktop',
      comment: 'Only main/hosts/desktop sees electron: everything else must run in the web host too.',
      severity: 'error',
      from: { path: '^(main|app|prisma)/', pathNot: '^main/hosts/desktop/' },
      to: { path: '^node_modules/electron/' },
    },
    {
      name: 'no-tests-in-product',
      comment: 'What ships never reaches into tests/. Move the shared piece out of tests/.',
      severity: 'error',
      from: { path: '^(main|app|prisma)/' },
      to: { path: '^tests/' },
    },
    {
      name: 'no-cycles',
      comment:
        'Files that need each other, for a type too, are one idea, or a third is hiding in them: give it a file.',
      severity: 'error',
      from: { pathNot: '^main/store/generated/' },
      to: { circular: true },
    },
    {
      name: 'no-orphans',
      comment: 'Nothing imports it and it imports nothing: delete it, or connect it.',
      severity: 'error',
      from: { orphan: true, pathNot: ['^tests/', '\\.d\\.ts$', '^main/hosts/cli/'] },
      to: {},
    },
    {
      name: 'resolvable',
      comment:
        'The import leads nowhere: mistyped, not generated (npm run db:generate), or not in package.json.',
      severity: 'error',
      from: {},
      to: { couldNotResolve: true },
    },
    {
      name: 'listed-in-package-json',
      comment: 'Used without being in package.json: it would vanish with the package that brought it.',
      severity: 'error',
      from: {},
      to: { dependencyTypes: ['npm-no-pkg', 'npm-unknown'] },
    },
    {
      name: 'no-dev-packages-in-product',
      comment: 'What ships may not need a devDependency. electron is the exception: it is the shell itself.',
      severity: 'error',
      from: { path: '^(main|app)/', pathNot: buildFiles },
      to: {
        dependencyTypes: ['npm-dev'],
        dependencyTypesNot: ['type-only'],
        pathNot: '^node_modules/electron/',
      },
    },
    onlyItsPackages('domain', '^main/domain/', packages.domain),
    onlyItsPackages('store', '^main/store/', packages.store),
    onlyItsPackages('services', '^main/services/', packages.services),
    onlyItsPackages('documents', '^main/documents/', packages.documents),
    onlyItsPackages('outbox', '^main/outbox/', packages.outbox),
    onlyItsPackages('api', '^main/api/', packages.api),
    onlyItsPackages('hosts', '^main/hosts/', [...packages.web, ...packages.desktop], buildFiles),
    onlyItsPackages('app', '^app/', packages.app, buildFiles),
    onlyItsPackages('build', buildFiles, packages.build),
  ],
  options: {
    doNotFollow: { path: ['node_modules', '^main/store/generated/'] },
    // TypeScript 7 has no programming interface, so the files are read by swc; it marks type-only imports itself.
    parser: 'swc',
    enhancedResolveOptions: { exportsFields: ['exports'], conditionNames: ['import', 'node', 'default'] },
  },
}
