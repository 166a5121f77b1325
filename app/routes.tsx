import { useQuery } from '@tanstack/react-query'
import {
  createRootRoute,
  createRoute,
  createRouter,
  lazyRouteComponent,
  Outlet,
  redirect,
  useRouterState,
} from '@tanstack/react-router'
import { say } from '../main/domain/language/index.ts'
import { queryClient, trpc } from './data/trpc.ts'
import { ConnectionLine } from './parts/ConnectionLine.tsx'
import { Failed } from './parts/Failed.tsx'
import { Frame } from './parts/Frame.tsx'
import { LeaveGuard } from './parts/form/LeaveGuard.tsx'
import { Lookup } from './parts/Lookup.tsx'
import { patient } from './patient.ts'

const screen: typeof lazyRouteComponent = (load, name) => lazyRouteComponent(() => patient(load), name)

/** Each screen is fetched when it is first gone to, and all of them once the first one stands (`loadScreens`). */
const screens = {
  Applied: screen(() => import('./screens/applied/Applied.tsx'), 'Applied'),
  Board: screen(() => import('./screens/board/Board.tsx'), 'Board'),
  Book: screen(() => import('./screens/book/Book.tsx'), 'Book'),
  Car: screen(() => import('./screens/car/Car.tsx'), 'Car'),
  CloseOfDay: screen(() => import('./screens/closeOfDay/CloseOfDay.tsx'), 'CloseOfDay'),
  Conditions: screen(() => import('./screens/conditions/Conditions.tsx'), 'Conditions'),
  Customer: screen(() => import('./screens/customers/Customer.tsx'), 'Customer'),
  Customers: screen(() => import('./screens/customers/Customers.tsx'), 'Customers'),
  MergeCustomers: screen(() => import('./screens/customers/MergeCustomers.tsx'), 'MergeCustomers'),
  Intake: screen(() => import('./screens/intake/Intake.tsx'), 'Intake'),
  NewCustomer: screen(() => import('./screens/customers/NewCustomer.tsx'), 'NewCustomer'),
  Imports: screen(() => import('./screens/imports/Imports.tsx'), 'Imports'),
  Job: screen(() => import('./screens/job/Job.tsx'), 'Job'),
  Money: screen(() => import('./screens/money/Money.tsx'), 'Money'),
  Morning: screen(() => import('./screens/morning/Morning.tsx'), 'Morning'),
  Plan: screen(() => import('./screens/plan/Plan.tsx'), 'Plan'),
  Settings: screen(() => import('./screens/settings/Settings.tsx'), 'Settings'),
  Shelf: screen(() => import('./screens/shelf/Shelf.tsx'), 'Shelf'),
  Upkeep: screen(() => import('./screens/upkeep/Upkeep.tsx'), 'Upkeep'),
  Verify: screen(() => import('./screens/verify/Verify.tsx'), 'Verify'),
  Welcome: screen(() => import('./screens/welcome/Welcome.tsx'), 'Welcome'),
}

function Root() {
  const shop = useQuery(trpc.shop.get.queryOptions()).data
  const first = useRouterState({ select: state => state.location.pathname === '/welcome' })
  return (
    <>
      <LeaveGuard />
      {shop && !first ? (
        <Frame />
      ) : (
        <ConnectionLine>
          <Outlet />
        </ConnectionLine>
      )}
    </>
  )
}

const noSuchScreen = new Error(say('There is no screen at this address.'))

function NoSuchScreen() {
  return <Lookup error={noSuchScreen} what={say('the screen')} to="/" label={say('Go to the board')} />
}

/** A database without a shop has one screen, without the bar; one with a shop has all but that. */
const root = createRootRoute({
  component: Root,
  errorComponent: Failed,
  notFoundComponent: NoSuchScreen,
  beforeLoad: async ({ location }) => {
    const shop = await queryClient.ensureQueryData(trpc.shop.get.queryOptions())
    if (!shop && location.pathname !== '/welcome') throw redirect({ to: '/welcome' })
    if (shop && location.pathname === '/welcome') throw redirect({ to: '/' })
  },
})

const welcome = createRoute({ getParentRoute: () => root, path: '/welcome', component: screens.Welcome })

const board = createRoute({ getParentRoute: () => root, path: '/', component: screens.Board })
const book = createRoute({ getParentRoute: () => root, path: '/book', component: screens.Book })
const morning = createRoute({ getParentRoute: () => root, path: '/morning', component: screens.Morning })
const plan = createRoute({
  getParentRoute: () => root,
  path: '/plan',
  beforeLoad: () => {
    throw redirect({ to: '/plan/$section', params: { section: 'relay' } })
  },
})
const planSection = createRoute({
  getParentRoute: () => root,
  path: '/plan/$section',
  component: screens.Plan,
})
const job = createRoute({ getParentRoute: () => root, path: '/jobs/$id', component: screens.Job })
const close = createRoute({ getParentRoute: () => root, path: '/close', component: screens.CloseOfDay })
const shelf = createRoute({
  getParentRoute: () => root,
  path: '/shelf',
  beforeLoad: () => {
    throw redirect({ to: '/shelf/$section', params: { section: 'stock' } })
  },
})
const shelfSection = createRoute({
  getParentRoute: () => root,
  path: '/shelf/$section',
  component: screens.Shelf,
})
const shelfRow = createRoute({
  getParentRoute: () => root,
  path: '/shelf/$section/$id',
  component: screens.Shelf,
})
const money = createRoute({
  getParentRoute: () => root,
  path: '/money',
  beforeLoad: () => {
    throw redirect({ to: '/money/$section', params: { section: 'owed' } })
  },
})
const moneySection = createRoute({
  getParentRoute: () => root,
  path: '/money/$section',
  component: screens.Money,
})
const moneyRow = createRoute({
  getParentRoute: () => root,
  path: '/money/$section/$id',
  component: screens.Money,
})
const applied = createRoute({
  getParentRoute: () => root,
  path: '/jobs/$id/applied',
  component: screens.Applied,
})
const verify = createRoute({ getParentRoute: () => root, path: '/verify', component: screens.Verify })
const intake = createRoute({
  getParentRoute: () => root,
  path: '/jobs/$id/intake',
  component: screens.Intake,
})
const conditions = createRoute({
  getParentRoute: () => root,
  path: '/conditions',
  component: screens.Conditions,
})
const upkeep = createRoute({
  getParentRoute: () => root,
  path: '/upkeep',
  beforeLoad: () => {
    throw redirect({ to: '/upkeep/$section', params: { section: 'due' } })
  },
})
const upkeepSection = createRoute({
  getParentRoute: () => root,
  path: '/upkeep/$section',
  component: screens.Upkeep,
})
const upkeepRow = createRoute({
  getParentRoute: () => root,
  path: '/upkeep/$section/$id',
  component: screens.Upkeep,
})
const car = createRoute({ getParentRoute: () => root, path: '/cars/$id', component: screens.Car })
const customers = createRoute({
  getParentRoute: () => root,
  path: '/customers',
  component: screens.Customers,
})
const newCustomer = createRoute({
  getParentRoute: () => root,
  path: '/customers/new',
  component: screens.NewCustomer,
})
const imports = createRoute({
  getParentRoute: () => root,
  path: '/imports',
  component: screens.Imports,
})
const customer = createRoute({
  getParentRoute: () => root,
  path: '/customers/$id',
  component: screens.Customer,
})
const merge = createRoute({
  getParentRoute: () => root,
  path: '/customers/$id/merge/$other',
  component: screens.MergeCustomers,
})
const settings = createRoute({
  getParentRoute: () => root,
  path: '/settings',
  beforeLoad: () => {
    throw redirect({ to: '/settings/$section', params: { section: 'shop' } })
  },
})
const settingsSection = createRoute({
  getParentRoute: () => root,
  path: '/settings/$section',
  component: screens.Settings,
})
const settingsRow = createRoute({
  getParentRoute: () => root,
  path: '/settings/$section/$id',
  component: screens.Settings,
})

const routeTree = root.addChildren([
  verify,
  welcome,
  board,
  book,
  morning,
  plan,
  planSection,
  job,
  applied,
  intake,
  close,
  shelf,
  shelfSection,
  shelfRow,
  money,
  moneySection,
  moneyRow,
  conditions,
  upkeep,
  upkeepSection,
  upkeepRow,
  car,
  customers,
  newCustomer,
  imports,
  customer,
  merge,
  settings,
  settingsSection,
  settingsRow,
])

export const router = createRouter({ routeTree, defaultErrorComponent: Failed })

/** Fetches what has not been gone to yet: a screen opens at once then, also when the app behind is gone for a moment. */
export async function loadScreens(): Promise<void> {
  for (const screen of Object.values(screens)) await screen.preload?.()
}

declare module '@tanstack/react-router' {
  interface Register {
    router: typeof router
  }
}
