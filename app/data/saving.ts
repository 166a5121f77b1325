import { modals } from '@mantine/modals'
import { useMutation } from '@tanstack/react-query'
import { createElement, useRef } from 'react'
import { say } from '../../main/domain/language/index.ts'
import { whileSaving } from './changes.ts'
import { faultOf, queryClient } from './trpc.ts'

/** What of a mutation's options is needed here: `trpc.bays.save.mutationOptions()` fits. */
export interface SavingOptions<Input, Result = unknown> {
  // biome-ignore lint/suspicious/noExplicitAny: the query library's own context, passed through
  mutationFn?: ((input: Input, context: any) => Promise<Result>) | undefined
}

export interface Saving<Input, Result> {
  /** Saves; `done` is called once every list shows it, even where the button is gone by then. */
  save(input: Input, done?: (result: Result) => void): void
  busy: boolean
  /** The last refusal, until the next attempt. */
  error: unknown
  reset(): void
}

interface Attempt<Input, Result> {
  input: Input
  done: ((result: Result) => void) | undefined
}

/** The refusals a person may overrule, each with the question it asks. */
export const questions: Readonly<Record<string, string>> = {
  'touches-bookings': say('This touches booked cars'),
  'in-use': say('This is still in use'),
  'known-already': say('This may be on file already'),
  restores: say('This takes the place of what is here'),
  erases: say('This erases a person'),
  'not-electronic': say('This is no electronic invoice yet'),
  taken: say('Something is in the way'),
}

interface Hearers<Result> {
  /** Hears at once what was saved, before the lists are looked up again. */
  onSaved?: (result: Result) => void
  /** Hears of a refusal, unless it is the question about booked cars. */
  onRefused?: (error: unknown) => void
}

/**
 * The one way a screen changes anything. It is deaf while a change is on its way: a button is disabled only when React
 * has drawn again, the second click of a double click comes before that, and would save a thing twice. A change that is
 * refused only until somebody has seen what it touches shows the words, and the person decides.
 */
export function useSaving<Input, Result>(
  { mutationFn }: SavingOptions<Input, Result>,
  { onSaved, onRefused }: Hearers<Result> = {},
): Saving<Input, Result> {
  const running = useRef(false)
  const { mutate, isPending, error, reset } = useMutation<Result, unknown, Attempt<Input, Result>>({
    ...(mutationFn && {
      mutationFn: ({ input }, context) => whileSaving(() => mutationFn(input, context)),
    }),
    onSuccess: async (result, { done }) => {
      onSaved?.(result)
      await queryClient.invalidateQueries()
      done?.(result)
    },
    onError: (refused, { input, done }) => {
      void queryClient.invalidateQueries()
      const { reason, message } = faultOf(refused)
      const title = questions[reason ?? '']
      if (title === undefined || (input as { accepted?: true }).accepted) return onRefused?.(refused)
      modals.openConfirmModal({
        title,
        children: createElement('p', { style: { whiteSpace: 'pre-line', margin: 0 } }, message),
        size: 'lg',
        labels: { confirm: say('Do it anyway'), cancel: say('Leave it as it is') },
        onConfirm: () => save({ ...input, accepted: true }, done),
      })
    },
    onSettled: () => {
      running.current = false
    },
  })
  const save = (input: Input, done?: (result: Result) => void) => {
    if (running.current) return
    running.current = true
    mutate({ input, done })
  }
  return { save, busy: isPending, error, reset }
}

/** A change that asks for nothing: `run` does it and tells what came of it. */
export function useAct<Result>(options: SavingOptions<void, Result>) {
  const { save, ...rest } = useSaving(options)
  return { ...rest, run: (done?: (result: Result) => void) => save(undefined, done) }
}
