import { system } from './system.ts'
import { router } from './trpc.ts'

/** The whole surface, by area: what each does is said in its own file. */
export const appRouter = router({
  system,
})

export type AppRouter = typeof appRouter
