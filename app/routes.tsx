import { createRootRoute, createRoute, createRouter } from '@tanstack/react-router'
import { Frame } from './parts/Frame.tsx'

const root = createRootRoute({ component: Frame })

const board = createRoute({ getParentRoute: () => root, path: '/', component: () => <h1>Board</h1> })

const routeTree = root.addChildren([board])

export const router = createRouter({ routeTree })

declare module '@tanstack/react-router' {
  interface Register {
    router: typeof router
  }
}
