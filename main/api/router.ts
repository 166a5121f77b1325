import { backups } from './backups.ts'
import { bays } from './bays.ts'
import { board } from './board.ts'
import { booking } from './booking.ts'
import { consents } from './consents.ts'
import { crew } from './crew.ts'
import { applied, cure } from './cure.ts'
import { customers } from './customers.ts'
import { dayPlan } from './dayPlan.ts'
import { effort } from './effort.ts'
import { feeds } from './feeds.ts'
import { history } from './history.ts'
import { hours } from './hours.ts'
import { imports } from './imports.ts'
import { intake } from './intake.ts'
import { jobs } from './jobs.ts'
import { leaving } from './leaving.ts'
import { lendables } from './lendables.ts'
import { mail } from './mail.ts'
import { mend } from './mend.ts'
import { money } from './money.ts'
import { morning } from './morning.ts'
import { orders } from './orders.ts'
import { products } from './products.ts'
import { readings } from './readings.ts'
import { reminders } from './reminders.ts'
import { safety } from './safety.ts'
import { sensors } from './sensors.ts'
import { shelf } from './shelf.ts'
import { shop } from './shop.ts'
import { suppliers } from './suppliers.ts'
import { system } from './system.ts'
import { results, templates } from './templates.ts'
import { treatments } from './treatments.ts'
import { router } from './trpc.ts'
import { upkeep } from './upkeep.ts'
import { vehicles } from './vehicles.ts'
import { waiting } from './waiting.ts'

/** The whole surface, by area: what each does is said in its own file. */
export const appRouter = router({
  applied,
  backups,
  bays,
  board,
  booking,
  consents,
  crew,
  cure,
  customers,
  dayPlan,
  effort,
  feeds,
  history,
  hours,
  imports,
  intake,
  jobs,
  leaving,
  lendables,
  mail,
  mend,
  money,
  morning,
  orders,
  products,
  reminders,
  results,
  readings,
  sensors,
  safety,
  shelf,
  shop,
  suppliers,
  templates,
  treatments,
  upkeep,
  vehicles,
  waiting,
  system,
})

export type AppRouter = typeof appRouter
