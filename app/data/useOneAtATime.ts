import type { UseMutationResult } from '@tanstack/react-query'
import { useRef } from 'react'

/**
 * The same mutation, deaf while one is on its way. A button is disabled only when React has drawn again; the second
 * click of a double click comes before that, and would save a thing twice or be refused for what the first has done.
 */
export function useOneAtATime<Output, Failure, Input, Context>(
  mutation: UseMutationResult<Output, Failure, Input, Context>,
) {
  const busy = useRef(false)
  const mutate = (input: Input) => {
    if (busy.current) return
    busy.current = true
    mutation.mutate(input, {
      onSettled: () => {
        busy.current = false
      },
    })
  }
  return { ...mutation, mutate }
}
