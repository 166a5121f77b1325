import { TextInput } from '@mantine/core'
import { wallWords } from '../../../main/domain/calendar/index.ts'
import { say } from '../../../main/domain/language/index.ts'
import { longWords } from '../../parts/time.ts'
import type { Happened } from './useHappened.ts'

/** The time for the next start, finish, arrival or handover; empty means now. */
export function HappenedInput({ happened, zone }: { happened: Happened; zone: string }) {
  return (
    <TextInput
      label={say('It happened at')}
      placeholder={say('now')}
      description={
        happened.at === undefined
          ? say('Empty for now; else {time} or yesterday {earlier}', {
              time: wallWords(640),
              earlier: wallWords(1050),
            })
          : longWords(happened.at, zone)
      }
      value={happened.text}
      onChange={event => happened.change(event.currentTarget.value)}
      error={happened.error}
      w="19rem"
      size="xs"
    />
  )
}
