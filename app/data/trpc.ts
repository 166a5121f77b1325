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
import { askApp, Unanswered } from './connection.ts'
import { doorParams } from './door.ts'

const url = '/trpc'

export const queryClient = new QueryClient({
  defaultOptions: {
    // The app is on this computer: whether it has a network says nothing about it.
    mutations: { networkMode: 'always' },
    queries: {
      networkMode: 'always',
      staleTime: 30_000,
      refetchOnWindowFocus: true,
      // An app that does not answer is asked by the connection, not by every list.
      retry: (failures, error) => failures < 1 && !(error.cause instanceof Unanswered),
    },
  },
})

export const client = createTRPCClient<AppRouter>({
  links: [
    splitLink({
      condition: operation => operation.type === 'subscription',
      true: httpSubscriptionLink({ url, connectionParams: doorParams }),
      false: httpBatchLink({
        url,
        maxItems: 20,
        fetch: (address, init) => askApp(address, init as Parameters<typeof askApp>[1]),
      }),
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
