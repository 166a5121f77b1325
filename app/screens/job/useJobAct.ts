import { notifications } from '@mantine/notifications'
import { type UseMutationOptions, useMutation, useQueryClient } from '@tanstack/react-query'
import { faultOf } from '../../data/trpc.ts'
import { useOneAtATime } from '../../data/useOneAtATime.ts'

/**
 * One act on a job: what it changed is looked up again, and a refusal is said in its own words. The options are those
 * of a tRPC mutation.
 */
export function useJobAct<Input, Output, Failure>(
  options: UseMutationOptions<Output, Failure, Input>,
  done?: () => void,
) {
  const queries = useQueryClient()
  return useOneAtATime(
    useMutation({
      ...options,
      onSuccess: () => {
        queries.invalidateQueries()
        done?.()
      },
      onError: error => {
        queries.invalidateQueries()
        notifications.show({
          title: 'Not done',
          message: faultOf(error).message,
          color: 'red',
          autoClose: 12_000,
        })
      },
    }),
  )
}
