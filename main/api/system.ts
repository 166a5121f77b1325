import { type Told, toldOf } from '../services/desk/told.ts'
import { diagnostics } from '../services/diagnostics/diagnostics.ts'
import { procedure, router } from './trpc.ts'

export const system = router({
  /** The shop's clock, so that every window counts from the same now. */
  now: procedure.query(({ ctx }) => ({ nowAt: ctx.now() })),

  /** What whoever looks after the app may be sent. */
  diagnostics: procedure.query(({ ctx }) => diagnostics(ctx)),

  /** Tells what has become old with each save, by this window or another, for as long as somebody listens. */
  changes: procedure.subscription(async function* ({ ctx, signal }) {
    const waiting: Told[] = []
    let wake: () => void = () => {}
    const stop = ctx.store.onCommit((_, save) => {
      waiting.push(toldOf(ctx.store, save))
      wake()
    })
    const aborted = () => signal?.aborted ?? false
    signal?.addEventListener('abort', () => wake())
    try {
      while (!aborted()) {
        const next = waiting.shift()
        if (next) yield next
        else
          await new Promise<void>(resolve => {
            wake = resolve
          })
      }
    } finally {
      stop()
    }
  }),
})
