import { lazy } from '@trpc/server'
import { router } from './trpc.ts'

/**
 * The whole surface, by area: what each does is said in its own file. An area is loaded when something of it is first
 * asked for: all of them take 40 MB and a second, and a start wants two or three.
 */
export const appRouter = router({
  applied: lazy(() => import('./cure.ts').then(room => room.applied)),
  backups: lazy(() => import('./backups.ts')),
  bays: lazy(() => import('./bays.ts')),
  board: lazy(() => import('./board.ts')),
  booking: lazy(() => import('./booking.ts')),
  consents: lazy(() => import('./consents.ts')),
  crew: lazy(() => import('./crew.ts')),
  cure: lazy(() => import('./cure.ts').then(room => room.cure)),
  customers: lazy(() => import('./customers.ts')),
  dayPlan: lazy(() => import('./dayPlan.ts')),
  effort: lazy(() => import('./effort.ts')),
  feeds: lazy(() => import('./feeds.ts').then(room => room.feeds)),
  history: lazy(() => import('./history.ts')),
  hours: lazy(() => import('./hours.ts')),
  imports: lazy(() => import('./imports.ts')),
  intake: lazy(() => import('./intake.ts')),
  jobs: lazy(() => import('./jobs.ts')),
  leaving: lazy(() => import('./leaving.ts')),
  lendables: lazy(() => import('./lendables.ts')),
  mail: lazy(() => import('./mail.ts')),
  mend: lazy(() => import('./mend.ts')),
  money: lazy(() => import('./money.ts')),
  morning: lazy(() => import('./morning.ts')),
  orders: lazy(() => import('./orders.ts')),
  products: lazy(() => import('./products.ts')),
  reminders: lazy(() => import('./reminders.ts')),
  results: lazy(() => import('./templates.ts').then(room => room.results)),
  readings: lazy(() => import('./readings.ts')),
  sensors: lazy(() => import('./sensors.ts')),
  safety: lazy(() => import('./safety.ts')),
  shelf: lazy(() => import('./shelf.ts')),
  shop: lazy(() => import('./shop.ts')),
  suppliers: lazy(() => import('./suppliers.ts')),
  templates: lazy(() => import('./templates.ts').then(room => room.templates)),
  treatments: lazy(() => import('./treatments.ts')),
  upkeep: lazy(() => import('./upkeep.ts')),
  vehicles: lazy(() => import('./vehicles.ts')),
  waiting: lazy(() => import('./waiting.ts')),
  system: lazy(() => import('./system.ts')),
})

export type AppRouter = typeof appRouter
