import { useQuery } from '@tanstack/react-query'
import {
  createRootRoute,
  createRoute,
  createRouter,
  Outlet,
  redirect,
  useRouterState,
} from '@tanstack/react-router'
import { queryClient, trpc } from './data/trpc.ts'
import { ConnectionLine } from './parts/ConnectionLine.tsx'
import { Failed } from './parts/Failed.tsx'
import { Frame } from './parts/Frame.tsx'
import { LeaveGuard } from './parts/form/LeaveGuard.tsx'
import { Lookup } from './parts/Lookup.tsx'
import { Applied } from './screens/applied/Applied.tsx'
import { Board } from './screens/board/Board.tsx'
import { Book } from './screens/book/Book.tsx'
import { Car } from './screens/car/Car.tsx'
import { CloseOfDay } from './screens/closeOfDay/CloseOfDay.tsx'
import { Conditions } from './screens/conditions/Conditions.tsx'
import { Customer } from './screens/customers/Customer.tsx'
import { Customers } from './screens/customers/Customers.tsx'
import { NewCustomer } from './screens/customers/NewCustomer.tsx'
import { Job } from './screens/job/Job.tsx'
import { Morning } from './screens/morning/Morning.tsx'
import { Settings } from './screens/settings/Settings.tsx'
import { Shelf } from './screens/shelf/Shelf.tsx'
import { Upkeep } from './screens/upkeep/Upkeep.tsx'
import { Welcome } from './screens/welcome/Welcome.tsx'

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

const noSuchScreen = new Error('There is no screen at this address.')

function NoSuchScreen() {
  return <Lookup error={noSuchScreen} what="the screen" to="/" label="Go to the board" />
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

const welcome = createRoute({ getParentRoute: () => root, path: '/welcome', component: Welcome })

const board = createRoute({ getParentRoute: () => root, path: '/', component: Board })
const book = createRoute({ getParentRoute: () => root, path: '/book', component: Book })
const morning = createRoute({ getParentRoute: () => root, path: '/morning', component: Morning })
const job = createRoute({ getParentRoute: () => root, path: '/jobs/$id', component: Job })
const close = createRoute({ getParentRoute: () => root, path: '/close', component: CloseOfDay })
const shelf = createRoute({
  getParentRoute: () => root,
  path: '/shelf',
  beforeLoad: () => {
    throw redirect({ to: '/shelf/$section', params: { section: 'stock' } })
  },
})
const shelfSection = createRoute({ getParentRoute: () => root, path: '/shelf/$section', component: Shelf })
const shelfRow = createRoute({ getParentRoute: () => root, path: '/shelf/$section/$id', component: Shelf })
const applied = createRoute({ getParentRoute: () => root, path: '/jobs/$id/applied', component: Applied })
const conditions = createRoute({ getParentRoute: () => root, path: '/conditions', component: Conditions })
const upkeep = createRoute({
  getParentRoute: () => root,
  path: '/upkeep',
  beforeLoad: () => {
    throw redirect({ to: '/upkeep/$section', params: { section: 'due' } })
  },
})
const upkeepSection = createRoute({ getParentRoute: () => root, path: '/upkeep/$section', component: Upkeep })
const upkeepRow = createRoute({ getParentRoute: () => root, path: '/upkeep/$section/$id', component: Upkeep })
const car = createRoute({ getParentRoute: () => root, path: '/cars/$id', component: Car })
const customers = createRoute({ getParentRoute: () => root, path: '/customers', component: Customers })
const newCustomer = createRoute({
  getParentRoute: () => root,
  path: '/customers/new',
  component: NewCustomer,
})
const customer = createRoute({ getParentRoute: () => root, path: '/customers/$id', component: Customer })
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
  component: Settings,
})
const settingsRow = createRoute({
  getParentRoute: () => root,
  path: '/settings/$section/$id',
  component: Settings,
})

const routeTree = root.addChildren([
  welcome,
  board,
  book,
  morning,
  job,
  applied,
  close,
  shelf,
  shelfSection,
  shelfRow,
  conditions,
  upkeep,
  upkeepSection,
  upkeepRow,
  car,
  customers,
  newCustomer,
  customer,
  settings,
  settingsSection,
  settingsRow,
])

export const router = createRouter({ routeTree, defaultErrorComponent: Failed })

declare module '@tanstack/react-router' {
  interface Register {
    router: typeof router
  }
}
