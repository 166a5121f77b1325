/** Eight windows on mixed screens while somebody saves once a second: what each save takes, and what all of it costs. */
import { setTimeout as wait } from 'node:timers/promises'
import { dateOf } from '../../../main/domain/calendar/index.ts'
import { type Told, toldOf } from '../../../main/services/desk/told.ts'
import type { Store } from '../../../main/store/store.ts'
import { yearsNowAt } from './fillYears.ts'
import type { Ids } from './screenQuestions.ts'

/** Does one call of the app, and gives its status. */
export type Call = (path: string, input: unknown, post?: true) => Promise<number>

type Screen = readonly [path: string, input: unknown][]

const zone = 'America/New_York'
const day = (days: number) => dateOf(yearsNowAt + days * 1440, zone)
const seconds = 40
/** Saves before those that count: a desk that works all day runs compiled code. */
const warmUps = 8

/** What each window shows; all of them also ask for the shop and how its copies stand. */
function screens({ vehicleId, customerId, jobId, productId }: Ids): Screen[] {
  const board: Screen = [
    ['board.range', { fromDate: day(0), days: 7 }],
    ['booking.held', undefined],
  ]
  const shown: Screen[] = [
    board,
    board,
    [
      ['jobs.get', { id: jobId }],
      ['cure.job', { id: jobId }],
    ],
    [['morning.sheet', { date: day(0) }]],
    [
      ['customers.get', { id: customerId }],
      ['money.statement', { id: customerId }],
    ],
    [
      ['money.owed', undefined],
      ['money.takings', { date: day(0) }],
    ],
    [
      ['shelf.list', undefined],
      ['shelf.product', { id: productId }],
    ],
    [
      ['upkeep.due', { fromDate: day(0), toDate: day(30) }],
      ['upkeep.car', { vehicleId }],
    ],
  ]
  return shown.map(screen => [...screen, ['shop.get', undefined], ['backups.standing', undefined]])
}

/** One save after another, of different rooms, on the rows as they are by then. */
async function saveOf(store: Store, { fleetId, jobId }: Ids, turn: number): Promise<[string, unknown]> {
  const tx = store.read
  switch (turn % 4) {
    case 0: {
      const customer = await tx.customer.findUniqueOrThrow({ where: { id: fleetId } })
      return [
        'customers.save',
        { ...customer, name: `${customer.name.split(',')[0]}, ${turn}`, accepted: true },
      ]
    }
    case 1:
      return ['jobs.note', { id: jobId, words: `Called at ${turn}` }]
    case 2: {
      const lot = await tx.lot.findFirstOrThrow({ where: { leftCenti: { gt: 1_000 } } })
      const { productId, id: lotId } = lot
      return ['shelf.use', { productId, lotId, amount: 0.1, reason: 'Tried on a panel' }]
    }
    default: {
      const { _sum } = await tx.payment.aggregate({ where: { jobId }, _sum: { amountMinor: true } })
      const payment = { id: jobId, method: 'cash', amountMinor: -1, tipMinor: 0, note: '' }
      return ['money.pay', { ...payment, seenPaidMinor: _sum.amountMinor ?? 0 }]
    }
  }
}

export interface EightWindows {
  /** Of one core, all eight windows and the saves together, in percent. */
  corePercent: number
  /** How long 19 of 20 saves took at most, waiting for the windows' questions included. */
  saveMs: number
  /** Questions asked after a save, of those the eight windows show. */
  askedPercent: number
}

export async function eightWindows(store: Store, ids: Ids, call: Call): Promise<EightWindows> {
  const windows = screens(ids)
  const show = async (screen: Screen) => {
    for (const status of await Promise.all(screen.map(([path, input]) => call(path, input))))
      if (status !== 200) throw new Error(`a window was answered with ${status}`)
  }
  for (const screen of windows) await show(screen)
  const asked: Promise<void>[] = []
  let [questions, told] = [0, 0]
  const hear = ({ paths }: Told) => {
    told++
    for (const screen of windows) {
      const old = screen.filter(([path]) => paths === null || paths.includes(path))
      questions += old.length
      asked.push(show(old))
    }
  }
  const stop = store.onCommit((_, save) => hear(toldOf(store, save)))
  const times: number[] = []
  const before = process.cpuUsage()
  const startedAt = performance.now()
  for (let turn = 0; turn < seconds; turn++) {
    const [path, input] = await saveOf(store, ids, turn)
    const at = performance.now()
    const status = await call(path, input, true)
    if (turn >= warmUps) times.push(performance.now() - at)
    if (status !== 200) throw new Error(`${path} was answered with ${status}`)
    await wait(Math.max(0, startedAt + (turn + 1) * 1_000 - performance.now()))
  }
  await Promise.all(asked)
  stop()
  const { user, system } = process.cpuUsage(before)
  const shown = windows.reduce((sum, screen) => sum + screen.length, 0)
  return {
    corePercent: (user + system) / 10 / (performance.now() - startedAt),
    saveMs: times.sort((a, b) => a - b)[Math.ceil(times.length * 0.95) - 1]!,
    askedPercent: (100 * questions) / (told * shown),
  }
}
