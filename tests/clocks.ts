/*
 * `npm run test:clocks`: the whole suite at twelve awkward instants, each in the zone it is awkward in: the machine's
 * clock and zone, and the browser's. `-- 3 7` runs the third and the seventh; `-- --part` runs what the day could break
 * at one of them, which the commit chooses, or at those named.
 */
import { execFileSync } from 'node:child_process'
import { buildStale } from '../main/hosts/build.ts'
import { type Count, check, endToEnd, tally, unit } from './parts.ts'
import { clockEnv } from './setup/clock.ts'
import { instants } from './setup/instants.ts'

const args = process.argv.slice(2)
const part = args.includes('--part')

/** Where a day and its hours count most: a part is to be over in two minutes. */
const dated = ['applied', 'board', 'booking', 'desk', 'floor', 'job', 'morning', 'records', 'upkeep']
  .map(room => `tests/services/${room}/`)
  .concat('tests/outbox/', 'tests/documents/')

/** Another one with each commit, so that they all have their turn, and the same again where a run is repeated. */
function chosenByCommit(): number {
  const commit = execFileSync('git', ['rev-parse', 'HEAD'], { encoding: 'utf8' })
  return Number.parseInt(commit.slice(0, 8), 16) % instants.length
}

function chosen(): number[] {
  const given = args.filter(arg => arg !== '--part').map(arg => Number(arg) - 1)
  if (part && given.length === 0) return [chosenByCommit()]
  if (given.some(index => !(index in instants))) {
    console.error(`Usage: npm run test:clocks [-- [--part] NUMBER ...], numbers from 1 to ${instants.length}`)
    process.exit(2)
  }
  return given.length > 0 ? given : [...instants.keys()]
}

const indices = chosen()
await buildStale()
const counts: Count[] = []
for (const index of indices) {
  const { name, at } = instants[index]!
  const when = Temporal.ZonedDateTime.from(at)
  console.log(`Clock ${index + 1} of ${instants.length}: ${name}, ${at}`)
  const env = {
    LUSTRUM_TEST_NOW: when.toInstant().toString(),
    LUSTRUM_TEST_BEGAN: String(Temporal.Now.instant().epochMilliseconds),
    TZ: when.timeZoneId,
    // Twelve instants are no reason to draw a property's rarest case twelve times: see tests/domain/cases.ts.
    LUSTRUM_AGAIN: '1',
  }
  const words = part ? dated : []
  counts.push(await check(unit('unit', words, { ...env, ...clockEnv(env.LUSTRUM_TEST_NOW) })))
  counts.push(await check(endToEnd('end-to-end', part ? ['anyDay'] : [], env)))
}
tally(counts)
