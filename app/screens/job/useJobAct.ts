import { notifications } from '@mantine/notifications'
import { say } from '../../../main/domain/language/index.ts'
import { type SavingOptions, useSaving } from '../../data/saving.ts'
import { faultOf } from '../../data/trpc.ts'

/** Says in a corner of the screen what was refused. */
export function sayNotDone(refused: unknown): void {
  notifications.show({
    title: say('Not done'),
    message: faultOf(refused).message,
    color: 'red',
    autoClose: 12_000,
  })
}

/** One act on a job: what it changed is looked up again, and a refusal is said in its own words. */
export function useJobAct<Input, Output>(options: SavingOptions<Input, Output>, done?: () => void) {
  const { save, busy, error } = useSaving(options, { onRefused: sayNotDone })
  return { mutate: (input: Input) => save(input, done), isPending: busy, error }
}
