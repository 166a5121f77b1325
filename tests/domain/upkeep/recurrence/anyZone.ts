/** Prints the answers that must not depend on the zone of the machine. Run under several values of TZ. */

import { dateText, dayNumber } from '../../../../main/domain/upkeep/recurrence/dayNumber.ts'
import { dayRule } from '../../../../main/domain/upkeep/recurrence/dayRule.ts'
import { firstOccurrences } from '../../../../main/domain/upkeep/recurrence/occurrences.ts'
import recurrence from '../../../reference/recurrence.json' with { type: 'json' }

const start = dayNumber('2026-01-30')
const monthly = dayRule('FREQ=MONTHLY;BYDAY=-1FR', 'Europe/Berlin')

console.log(
  JSON.stringify({
    machineOffsetMin: new Date(Date.UTC(2026, 0, 1)).getTimezoneOffset(),
    answers: recurrence.cases.map(({ id, input }) => [id, firstOccurrences(input, 60)]),
    nextDay: dateText(monthly.next(start, start)!),
  }),
)
