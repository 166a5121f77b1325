import { createRootRoute, createRoute, createRouter } from '@tanstack/react-router'
import { Frame } from './parts/Frame.tsx'
import { Board } from './screens/board/Board.tsx'
import { Book } from './screens/book/Book.tsx'
import { Job } from './screens/job/Job.tsx'
import { Morning } from './screens/morning/Morning.tsx'

const root = createRootRoute({ component: Frame })

const board = createRoute({ getParentRoute: () => root, path: '/', component: Board })
const book = createRoute({ getParentRoute: () => root, path: '/book', component: Book })
const morning = createRoute({ getParentRoute: () => root, path: '/morning', component: Morning })
const job = createRoute({ getParentRoute: () => root, path: '/jobs/$id', component: Job })

const routeTree = root.addChildren([board, book, morning, job])

export const router = createRouter({ routeTree })

declare module '@tanstack/react-router' {
  interface Register {
    router: typeof router
  }
}
