import { bent } from './bent.ts'
import { inputOf, typeOf } from './inputOf.ts'
import { readKnown } from './knownRows.ts'
import type { Api } from './makeApi.ts'
import { procedures } from './procedures.ts'

/** What sends letters over the network, fills the shop anew, or never ends. */
const notAsked = new Set([
  'mail.test',
  'reminders.send',
  'reminders.sendTest',
  'shop.openDemo',
  'system.changes',
])
/** Fifty or more times as long as the others on a shop in full swing: once in so many rounds is enough. */
const rarely = 40
const costly = new Set([
  'backups.make',
  'cure.takeNotices',
  'leaving.pack',
  'morning.sheet',
  'orders.propose',
  'reminders.batch',
  'reminders.prepare',
  'shelf.closeOfDay',
  'system.diagnostics',
  'upkeep.spread.carryOut',
  'upkeep.spread.preview',
  'upkeep.year',
])
/** Acts change the rows and their versions: how many calls they are taken to be as they were. */
const knownFor = 60
/** Two seconds; a short run may share the machine with every other test, which makes each instruction slower. */
const longestMs = process.env.LUSTRUM_FUZZ ? 2_000 : 4_000

export interface Fuzzed {
  calls: number
  /** With a value; the others were refused. */
  answered: number
  slowest: { path: string; ms: number }
  /** Answers that were neither a value nor words, or that told of the inside. */
  faults: string[]
}

/** Asks every procedure again and again, until `calls` are made. */
export async function fuzz(
  { desk, query, mutate }: Api,
  { calls, random }: { calls: number; random: () => number },
): Promise<Fuzzed> {
  const done: Fuzzed = { calls: 0, answered: 0, slowest: { path: '', ms: 0 }, faults: [] }
  const rows = readKnown(desk.store.source.file)
  let known = rows.read(random)
  for (let round = 0; done.calls < calls; round++)
    for (const [path, procedure] of Object.entries(procedures)) {
      if (notAsked.has(path) || (costly.has(path) && round % rarely > 0)) continue
      const schema = inputOf(procedure)
      const input = schema ? bent({ path, schema }, known, random) : undefined
      // What this process worked, not what it waited for: other programs may have the machine.
      const before = process.cpuUsage()
      const { status, message } = await (typeOf(procedure) === 'query' ? query : mutate)(path, input)
      const { user, system } = process.cpuUsage(before)
      const tookMs = (user + system) / 1000
      done.calls++
      if (status === 200) done.answered++
      if (tookMs > done.slowest.ms) done.slowest = { path, ms: Math.round(tookMs) }
      const said = faultOf(status, message) ?? (tookMs > longestMs ? `took ${tookMs} ms` : null)
      if (said !== null) done.faults.push(`${path} ${JSON.stringify(input)}: ${said}`)
      if (done.calls % knownFor === 0) known = rows.read(random)
      if (done.calls >= calls) break
    }
  rows.close()
  return done
}

/** What is wrong with an answer; null: nothing. */
function faultOf(status: number, message: string): string | null {
  const worded = status === 200 || (status < 500 && /\w/.test(message))
  const inside = /\n\s+at |prisma|SQLITE|\.[tj]s:\d|node_modules|lustrum-test-/i.test(message)
  return worded && !inside ? null : `${status} ${message}`
}
