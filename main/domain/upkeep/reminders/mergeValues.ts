import { writtenIn } from '../../language/index.ts'
import type { MergeValues } from './template.ts'

/** What the merge fields are made from, for one reminder. Dates are `YYYY-MM-DD`, slots epoch minutes. */
export interface MergeFacts {
  readonly ownerName: string
  readonly carName: string
  readonly plate: string
  readonly visitName: string
  readonly dueOn: string
  /** When the car was last in the shop. */
  readonly lastOn: string
  readonly slotAts: readonly number[]
  readonly heldUntilAt: number | null
  readonly shopName: string
  readonly shopPhone: string
  readonly shopAddress: string
  readonly stopWay: string
}

/** The values of the merge fields, dates and times in the owner's language and the shop's zone. */
export function mergeValues(facts: MergeFacts, language: string, shopZone: string): MergeValues {
  const { locale, hourCycle } = writtenIn(language)
  const date = (on: string) => Temporal.PlainDate.from(on).toLocaleString(locale, { dateStyle: 'long' })
  const moment = (at: number | undefined | null) =>
    at === undefined || at === null
      ? ''
      : Temporal.Instant.fromEpochMilliseconds(at * 60_000)
          .toLocaleString(locale, {
            hourCycle,
            timeZone: shopZone,
            weekday: 'long',
            day: 'numeric',
            month: 'long',
            hour: 'numeric',
            minute: '2-digit',
          })
          // Some languages part the hour from "am" with a narrow space that older mail programs show as a box.
          .replaceAll('\u202f', ' ')
  return {
    ownerName: facts.ownerName,
    carName: facts.carName,
    plate: facts.plate,
    visitName: facts.visitName,
    dueDate: date(facts.dueOn),
    lastDate: date(facts.lastOn),
    slotOne: moment(facts.slotAts[0]),
    slotTwo: moment(facts.slotAts[1]),
    heldUntil: moment(facts.heldUntilAt),
    shopName: facts.shopName,
    shopPhone: facts.shopPhone,
    shopAddress: facts.shopAddress,
    stopWay: facts.stopWay,
  }
}
