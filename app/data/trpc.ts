import { QueryClient } from '@tanstack/react-query'
import {
  createTRPCClient,
  httpBatchLink,
  httpSubscriptionLink,
  splitLink,
  TRPCClientError,
} from '@trpc/client'
import { createTRPCOptionsProxy } from '@trpc/tanstack-react-query'
import type { AppRouter } from '../../main/api/router.ts'

const url = '/trpc'

export const queryClient = new QueryClient({
  defaultOptions: { queries: { staleTime: 30_000, retry: 1, refetchOnWindowFocus: true } },
})

export const client = createTRPCClient<AppRouter>({
  links: [
    splitLink({
      condition: operation => operation.type === 'subscription',
      true: httpSubscriptionLink({ url }),
      false: httpBatchLink({ url, maxItems: 20 }),
    }),
  ],
})

/** Query and mutation options of every procedure: `useQuery(trpc.system.now.queryOptions())`. */
export const trpc = createTRPCOptionsProxy<AppRouter>({ client, queryClient })

/** The words of a failed call and the field they belong to, if any. */
export function faultOf(error: unknown): { message: string; field: string | null; reason: string | null } {
  if (error instanceof TRPCClientError) {
    const fault = (error as TRPCClientError<AppRouter>).data?.fault
    return { message: error.message, field: fault?.field ?? null, reason: fault?.reason ?? null }
  }
  return { message: error instanceof Error ? error.message : String(error), field: null, reason: null }
}

/** Every window looks again when any window has saved. */
export function listenForChanges(): () => void {
  const subscription = client.system.changes.subscribe(undefined, {
    onData: () => void queryClient.invalidateQueries(),
  })
  return () => subscription.unsubscribe()
}
