import { initTRPC, TRPCError } from '@trpc/server'
import { ZodError } from 'zod'
import { say } from '../domain/language/index.ts'
import { Refusal } from '../domain/refusal.ts'
import type { Desk } from '../services/desk/desk.ts'
import { noteAnswer } from '../services/desk/told.ts'
import { noteCall } from '../services/diagnostics/timings.ts'

/** What a screen needs to put an error where it belongs. */
export interface Fault {
  /** A reason a program can act on: "stale", "missing", "invalid", or the domain's own code. */
  reason: string
  /** The path of the input at fault, as in "steps.2.minutes". */
  field: string | null
}

function faultOf(error: TRPCError): Fault | null {
  const cause = error.cause
  if (cause instanceof Refusal) return { reason: cause.code, field: cause.field || null }
  if (cause instanceof ZodError) return { reason: 'invalid', field: pathOf(cause.issues[0]) }
  return null
}

/** The whole path of an issue: inside a union zod gives the path from the union on, so the two are joined. */
function pathOf(issue: ZodError['issues'][number] | undefined): string {
  if (!issue) return ''
  const inner = issue.code === 'invalid_union' ? issue.errors.flat()[0] : undefined
  return [...issue.path, ...(inner?.path ?? [])].join('.')
}

const t = initTRPC.context<Desk>().create({
  errorFormatter({ shape, error }) {
    const cause = error.cause
    const message =
      cause instanceof ZodError
        ? cause.issues.map(issue => `${pathOf(issue) || 'input'}: ${issue.message}`).join('; ')
        : cause instanceof Refusal
          ? cause.message
          : error.code === 'INTERNAL_SERVER_ERROR'
            ? say(
                'Something went wrong; nothing was saved. Try again. If it keeps happening, tell whoever looks after the app.',
              )
            : shape.message
    return { ...shape, message, data: { code: shape.data.code, fault: faultOf(error) } }
  },
})

const statusOf: Record<string, TRPCError['code']> = { stale: 'CONFLICT', missing: 'NOT_FOUND' }

/** Every procedure goes through here: what the domain refuses becomes an answer, not a crash. */
export const procedure = t.procedure.use(async ({ ctx, next, path, type }) => {
  const began = performance.now()
  const result = type === 'query' ? await noteAnswer(ctx.store, path, next) : await next()
  noteCall(ctx.store, path, performance.now() - began)
  const cause = result.ok ? null : ctx.store.explain(result.error.cause)
  if (cause instanceof Refusal) {
    throw new TRPCError({ code: statusOf[cause.code] ?? 'BAD_REQUEST', message: cause.message, cause })
  }
  return result
})

export const router = t.router
