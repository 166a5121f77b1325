import { mkdirSync, mkdtempSync, readFileSync, rmSync, symlinkSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { dirname, join } from 'node:path'
import { fileURLToPath } from 'node:url'
import { cruise, type ICruiseResult, type IForbiddenRuleType, type IOptions } from 'dependency-cruiser'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'

const config = '../../.dependency-cruiser.mjs'
const { default: rules, packages } = (await import(config)) as {
  default: { forbidden: (IForbiddenRuleType & { name: string })[]; options: IOptions }
  packages: Record<string, string[]>
}
const root = fileURLToPath(new URL('../..', import.meta.url))
const manifest = JSON.parse(readFileSync(join(root, 'package.json'), 'utf8')) as Record<
  'dependencies' | 'devDependencies',
  Record<string, string>
>

/** What stands in the planted tree besides the bad file: something to import in every layer. */
const ground: Record<string, string> = {
  'package.json': readFileSync(join(root, 'package.json'), 'utf8'),
  'main/domain/money.ts': 'export const one = 1\n',
  'main/store/store.ts': "import type { one } from '../domain/money.ts'\nexport type Store = typeof one\n",
  'main/store/generated/client.ts': 'export class PrismaClient {}\n',
  'main/domain/shop/index.ts': "export { two } from './two.ts'\n",
  'main/domain/shop/two.ts': 'export const two = 2\n',
  'main/services/shelf/stock.ts':
    "import { one } from '../../domain/money.ts'\nexport const stock = () => one\n",
  'main/services/booking/book.ts':
    "import { stock } from '../shelf/stock.ts'\nexport const book = () => stock()\n",
  'main/api/router.ts':
    "import { book } from '../services/booking/book.ts'\nexport const router = { book }\n",
  'app/screens/morning/Sheet.ts': 'export const sheet = 1\n',
  'app/screens/shelf/Stock.ts': 'export const stock = 1\n',
  'tests/help.ts': 'export const help = 1\n',
}

/** A file that breaks a rule, and the rule that must refuse it. */
const planted: [rule: string, file: string, content: string][] = [
  [
    'domain-imports-down',
    'main/domain/bad.ts',
    "import { book } from '../services/booking/book.ts'\nbook()\n",
  ],
  [
    'domain-imports-down',
    'main/domain/bad.ts',
    "import type { Store } from '../store/store.ts'\nexport type B = Store\n",
  ],
  ['domain-is-pure', 'main/domain/bad.ts', "import { readFileSync } from 'node:fs'\nreadFileSync('x')\n"],
  ['packages-of-domain', 'main/domain/bad.ts', "import { z } from 'zod'\nz.string()\n"],
  ['large-packages-late', 'main/store/bad.ts', "import sharp from 'sharp'\nsharp()\n"],
  ['rrule-in-upkeep', 'main/domain/bad.ts', "import { RRule } from 'rrule'\nnew RRule()\n"],
  ['store-imports-down', 'main/store/bad.ts', "import { book } from '../services/booking/book.ts'\nbook()\n"],
  [
    'services-imports-down',
    'main/services/shelf/bad.ts',
    "import { router } from '../../api/router.ts'\nrouter.book()\n",
  ],
  [
    'api-imports-down',
    'main/api/bad.ts',
    "import type { Store } from '../store/store.ts'\nexport type B = Store\n",
  ],
  [
    'services-shelf-looks-down',
    'main/services/shelf/bad.ts',
    "import { book } from '../booking/book.ts'\nexport type B = typeof book\n",
  ],
  ['services-in-rooms', 'main/api/bad.ts', "import { flat } from '../services/flat.ts'\nflat\n"],
  [
    'domain-by-its-face',
    'main/services/shelf/bad.ts',
    "import { two } from '../../domain/shop/two.ts'\ntwo\n",
  ],
  ['screens-apart', 'app/screens/book/bad.ts', "import { sheet } from '../morning/Sheet.ts'\nsheet\n"],
  ['screen-shelf-shown', 'app/screens/book/bad.ts', "import { stock } from '../shelf/Stock.ts'\nstock\n"],
  [
    'no-cycles',
    'main/domain/bad.ts',
    "import type { Worse } from './worse.ts'\nexport const bad = (): Worse | null => null\n",
  ],
  ['app-takes-api-as-types', 'app/bad.ts', "import { router } from '../main/api/router.ts'\nrouter.book()\n"],
  [
    'app-takes-types-and-domain',
    'app/bad.ts',
    "import type { Store } from '../main/store/store.ts'\nexport type B = Store\n",
  ],
  ['app-has-no-node', 'app/bad.ts', "import { join } from 'node:path'\njoin('a')\n"],
  ['packages-of-app', 'app/bad.ts', "import nodemailer from 'nodemailer'\nnodemailer.createTransport()\n"],
  [
    'prisma-in-store',
    'main/services/shelf/bad.ts',
    "import { PrismaClient } from '../../store/generated/client.ts'\nnew PrismaClient()\n",
  ],
  [
    'prisma-in-store',
    'main/services/shelf/bad.ts',
    "import Database from 'better-sqlite3'\nnew Database(':memory:')\n",
  ],
  ['electron-in-desktop', 'main/hosts/web/bad.ts', "import { app } from 'electron'\napp.quit()\n"],
  [
    'no-tests-in-product',
    'main/services/shelf/bad.ts',
    "import { help } from '../../../tests/help.ts'\nhelp\n",
  ],
  ['no-cycles', 'main/domain/bad.ts', "import { worse } from './worse.ts'\nexport const bad = () => worse\n"],
  ['no-orphans', 'main/domain/bad.ts', 'export const alone = 1\n'],
  ['resolvable', 'main/domain/bad.ts', "import { gone } from './gone.ts'\ngone()\n"],
  ['no-dev-packages-in-product', 'main/services/shelf/bad.ts', "import fc from 'fast-check'\nfc.integer()\n"],
]

describe('import rules', () => {
  let tree = ''
  beforeAll(() => {
    tree = mkdtempSync(join(tmpdir(), 'lustrum-rules-'))
    symlinkSync(join(root, 'node_modules'), join(tree, 'node_modules'))
    for (const [file, content] of Object.entries(ground)) plant(file, content)
  })
  afterAll(() => rmSync(tree, { recursive: true, force: true }))

  function plant(file: string, content: string): void {
    mkdirSync(dirname(join(tree, file)), { recursive: true })
    writeFileSync(join(tree, file), content)
  }

  /** The names of the rules broken by `file` in the planted tree. */
  async function broken(file: string): Promise<string[]> {
    const result = await cruise(
      ['main', 'app', 'tests'].filter(dir => dir !== 'app' || file.startsWith('app')),
      {
        ...rules.options,
        baseDir: tree,
        preserveSymlinks: true,
        validate: true,
        ruleSet: { forbidden: rules.forbidden },
      },
    )
    const { summary } = result.output as ICruiseResult
    return summary.violations.filter(({ from }) => from === file).map(({ rule }) => rule.name)
  }

  it('has nothing against the ground itself', async () => {
    plant('main/domain/fine.ts', "import { one } from './money.ts'\nexport const two = one + one\n")
    expect(await broken('main/domain/fine.ts')).toEqual([])
    plant(
      'app/fine.ts',
      "import type { router } from '../main/api/router.ts'\nexport type R = typeof router\n",
    )
    expect(await broken('app/fine.ts')).toEqual([])
  })

  it.each(planted)('%s refuses %s: %s', async (rule, file, content) => {
    plant(file, content)
    plant(
      'main/domain/worse.ts',
      "import { bad } from './bad.ts'\nexport const worse = () => bad\nexport type Worse = ReturnType<typeof worse>\n",
    )
    plant('main/services/flat.ts', 'export const flat = 1\n')
    if (rule !== 'no-cycles') rmSync(join(tree, 'main/domain/worse.ts'))
    try {
      expect(await broken(file)).toContain(rule)
    } finally {
      rmSync(join(tree, file))
      rmSync(join(tree, 'main/domain/worse.ts'), { force: true })
      rmSync(join(tree, 'main/services/flat.ts'))
    }
  })

  it('has a planted file against every rule but those that repeat another for a further layer', () => {
    const named = new Set(planted.map(([rule]) => rule))
    const unplanted = rules.forbidden.map(rule => rule.name).filter(name => !named.has(name))
    expect(unplanted.filter(name => !/^services-.*-looks-down$|^screen-.*-shown$/.test(name))).toEqual([
      'documents-imports-down',
      'outbox-imports-down',
      'listed-in-package-json',
      'packages-of-store',
      'packages-of-services',
      'packages-of-documents',
      'packages-of-outbox',
      'packages-of-api',
      'packages-of-hosts',
      'packages-of-build',
    ])
  })
})

describe('packages', () => {
  const listed = Object.values(packages).flat()

  it('each of package.json is classed under a layer, and nothing else is', () => {
    const wanted = Object.keys({ ...manifest.dependencies, ...manifest.devDependencies })
    expect([...new Set(listed)].sort()).toEqual(wanted.filter(name => !name.startsWith('@types/')).sort())
  })

  it('are pinned to one exact version', () => {
    for (const [name, version] of Object.entries({ ...manifest.dependencies, ...manifest.devDependencies }))
      expect(version, name).toMatch(/^\d+\.\d+\.\d+(-[\w.]+)?$/)
  })
})
