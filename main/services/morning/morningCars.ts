/** Cars that come, change bays and go home on a day. */

import { jobStays, leavingOf, leavingTimes } from '../../domain/floor/index.ts'
import { say } from '../../domain/language/index.ts'
import { showPhone } from '../../domain/vehicle/index.ts'
import { sentence } from '../../domain/words.ts'
import type { JobRow } from '../floor/jobRows.ts'
import { judged } from '../floor/judged.ts'
import { carOf, type Day, daySays, isOn, isToday } from './morningDay.ts'

/** Who is due, in order; on today's sheet also who should have come before. */
export function arrivalsOf(day: Day, rows: readonly JobRow[]) {
  return rows
    .filter(
      ({ status, dropOffAt }) =>
        isOn(day, dropOffAt) || (status === 'booked' && isToday(day) && dropOffAt < day.fromAt),
    )
    .map(row => ({
      ...carOf(row),
      dueAt: row.dropOffAt,
      arrivedAt: row.arrivedAt,
      phone: phoneOf(day, row),
      bayName: day.floor.bayNames.get(row.steps[0]?.bayId ?? '') ?? '',
      treatments: row.treatments.map(treatment => treatment.name),
      lent: row.loans.map(({ lendable }) => lendable.name),
    }))
    .sort((a, b) => a.dueAt - b.dueAt)
}

/** Cars that change bays, in order. */
export function movesOf(day: Day, rows: readonly JobRow[]) {
  return rows
    .flatMap(row => {
      const stays = jobStays(row)
      return stays.slice(1).flatMap((stay, i) =>
        isOn(day, stay.from)
          ? {
              ...carOf(row),
              at: stay.from,
              fromBayName: day.floor.bayNames.get(stays[i]?.bay ?? '') ?? '',
              toBayName: day.floor.bayNames.get(stay.bay) ?? '',
            }
          : [],
      )
    })
    .sort((a, b) => a.at - b.at)
}

/** Who goes home, in order; on today's sheet also cars that should be gone. */
export function handoversOf(day: Day, rows: readonly JobRow[]) {
  return rows
    .filter(
      ({ status, handoverAt, leftAt }) =>
        isOn(day, leftAt ?? handoverAt) || (status === 'inShop' && isToday(day) && handoverAt < day.fromAt),
    )
    .map(row => {
      const verdict = judged(day.floor).of(row)
      const { safeAt, advisedAt } = leavingTimes(row.steps, day.products, leavingOf(row))
      return {
        ...carOf(row),
        phone: phoneOf(day, row),
        handoverAt: verdict.expectedAt,
        promisedAt: row.promisedAt,
        safeAt,
        advisedAt,
        /** How its promise stands, the same everywhere. */
        standing: verdict.standing,
        lateMin: verdict.lateMin,
        /** What is missing for its promise, in a few words; null: nothing. */
        lack: verdict.lack,
        leftAt: row.leftAt,
        /** To be had back with the handover. */
        lent: row.loans.map(({ lendable }) => lendable.name),
        /** Since when it is ready and nobody has come for it; null: it is not so. */
        unfetchedAt: verdict.unfetchedAt,
        words: leavingWords(day, safeAt, advisedAt),
      }
    })
    .sort((a, b) => a.handoverAt - b.handoverAt)
}

/** The customer's number as the shop's country writes it, for whoever reads it off the sheet and dials. */
function phoneOf({ floor }: Day, { customer }: JobRow): string | null {
  return customer.phone === null ? null : showPhone(customer.phone, floor.shop.country)
}

/** From when the profiles let a car go; that they do is all that is said. */
function leavingWords(day: Day, safeAt: number, advisedAt: number): string {
  if (safeAt === advisedAt)
    return sentence(say('ready when its work is done, {day}', { day: daySays(day, safeAt) }))
  return sentence(
    say('by its profile earliest pick-up {day}, recommended {day2}', {
      day: daySays(day, safeAt),
      day2: daySays(day, advisedAt),
    }),
  )
}
