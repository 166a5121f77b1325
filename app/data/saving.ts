import { modals } from '@mantine/modals'
import { useMutation } from '@tanstack/react-query'
import { createElement } from 'react'
import { faultOf, queryClient } from './trpc.ts'

/** What of a mutation's options is needed here: `trpc.bays.save.mutationOptions()` fits. */
export interface SavingOptions<Input, Result = unknown> {
  // biome-ignore lint/suspicious/noExplicitAny: the query library's own context, passed through
  mutationFn?: ((input: Input, context: any) => Promise<Result>) | undefined
}

interface Saving<Input, Result> {
  /** Saves; where booked cars are touched, asks first and goes on once that is accepted. */
  save(input: Input, done?: (result: Result) => void): void
  busy: boolean
  /** The last refusal, until the next attempt. */
  error: unknown
  reset(): void
}

/** A change that may be refused because of what is booked: the words are shown, and the person decides. */
export function useSaving<Input extends object, Result>({
  mutationFn,
}: SavingOptions<Input, Result>): Saving<Input, Result> {
  const mutation = useMutation({
    ...(mutationFn ? { mutationFn } : {}),
    // Every list and form shows what is now true before the save counts as done.
    onSuccess: () => queryClient.invalidateQueries(),
  })
  const save = (input: Input, done?: (result: Result) => void) =>
    mutation.mutate(input, {
      onSuccess: result => done?.(result),
      onError: error => {
        const fault = faultOf(error)
        if (fault.reason !== 'touches-bookings' || 'accepted' in input) return
        modals.openConfirmModal({
          title: 'This touches booked cars',
          children: createElement('p', { style: { whiteSpace: 'pre-line', margin: 0 } }, fault.message),
          size: 'lg',
          labels: { confirm: 'Do it anyway', cancel: 'Leave it as it is' },
          closeButtonProps: { 'aria-label': 'Close' },
          onConfirm: () => save({ ...input, accepted: true }, done),
        })
      },
    })
  return { save, busy: mutation.isPending, error: mutation.error, reset: mutation.reset }
}

/** A change that asks for nothing: `run` does it and tells what came of it. */
export function useAct<Result>({ mutationFn }: SavingOptions<void, Result>) {
  const mutation = useMutation({
    ...(mutationFn ? { mutationFn } : {}),
    onSuccess: () => queryClient.invalidateQueries(),
  })
  const run = (done?: (result: Result) => void) =>
    mutation.mutate(undefined, { onSuccess: result => done?.(result) })
  return { run, busy: mutation.isPending, error: mutation.error, reset: mutation.reset }
}
