/*
 * `npm run mutate -- PATH`: changes the code under PATH one place at a time and runs the tests of its room against each
 * change. A change that no test notices has survived. Prints the score of each folder and every survivor with its place.
 * A whole floor (main/domain, main/services) is tried room by room, each named as it is done.
 *   --survivors N   how many survivors to print (40)
 *   --sample N      only N changes of all those under PATH, drawn by lot: an estimate of the score of a large folder
 *   --seed WORD     draws others
 *   --at-once N     how many are tried beside each other (2)
 */
import { globSync, statSync } from 'node:fs'
import { fileURLToPath } from 'node:url'
import { parseArgs } from 'node:util'
import { sample } from './sample.ts'
import { type Tried, tryChanges } from './tryChanges.ts'

const root = fileURLToPath(new URL('../..', import.meta.url))
const { values, positionals } = parseArgs({
  allowPositionals: true,
  options: {
    survivors: { type: 'string', default: '40' },
    sample: { type: 'string' },
    seed: { type: 'string', default: '' },
    'at-once': { type: 'string', default: '2' },
  },
})
const path = positionals[0]?.replace(/\/$/, '')
if (!path?.startsWith('main/')) {
  console.error('Name a file or folder under main, such as: npm run mutate -- main/domain/money')
  process.exit(2)
}

const files = globSync(statSync(`${root}${path}`).isDirectory() ? `${path}/**/*.ts` : path, {
  cwd: root,
  exclude: file => file.includes('generated') || file.endsWith('/index.ts'),
}).sort()
const drawn = values.sample ? await sample(root, files, Number(values.sample), values.seed) : null

/** The folder whose tests are run for a file: its room, or its floor where it lies in none. */
const roomOf = (file: string) =>
  file
    .split('/')
    .slice(0, 3)
    .filter(part => !part.endsWith('.ts'))
    .join('/')
const rooms = Map.groupBy(
  files.filter(file => !drawn || drawn.changes.some(change => change.file === file)),
  roomOf,
)

const share = (tried: Tried[]) => {
  const caught = tried.filter(each => each.caught).length
  const percent = tried.length === 0 ? 100 : ((100 * caught) / tried.length).toFixed(1)
  const timedOut = tried.filter(each => each.timedOut).length
  return `${caught} of ${tried.length} caught, ${percent} %${timedOut > 0 ? ` (${timedOut} by not ending)` : ''}`
}
const all: Tried[] = []
let left = Number(values.survivors)
for (const [room, its] of rooms) {
  const changes = drawn?.changes.filter(({ file }) => its.includes(file))
  const ranges = changes?.map(({ range }) => range) ?? its
  const tried = tryChanges(root, room, ranges, Number(values['at-once'])).filter(
    ({ key }) => !changes || changes.some(change => change.key === key),
  )
  all.push(...tried)
  const survivors = tried.filter(({ caught }) => !caught).slice(0, left)
  left -= survivors.length
  for (const { words } of survivors) console.log(words)
  if (rooms.size > 1) console.log(`${room}, all of it: ${share(tried)}`)
}

const folders = Map.groupBy(all, ({ file }) => file.slice(0, file.lastIndexOf('/')))
for (const [folder, tried] of [...folders].sort(([a], [b]) => a.localeCompare(b)))
  console.log(`${folder}: ${share(tried)}`)
const margin = drawn
  ? `, drawn from ${drawn.of}: give or take ${(98 / Math.sqrt(all.length)).toFixed(0)} points at most`
  : ''
console.log(`${path}: ${share(all)}${margin}`)
