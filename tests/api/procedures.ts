import { appRouter } from '../../main/api/router.ts'

// An area is loaded when it is first asked for: here all of them are wanted.
for (const area of Object.values(appRouter._def.lazy)) await area.load()

/** Every procedure of the app, by its path. */
export const { procedures } = appRouter._def
