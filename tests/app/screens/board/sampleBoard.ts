import type { BoardView, StayView } from '../../../../main/api/views.ts'

const monday = 29_600_000 - (29_600_000 % 1440)

/** A point of the sample week: the day's number from 0, and the clock in hours. */
export function at(day: number, hours: number): number {
  return monday + day * 1440 + hours * 60
}

export function stay(
  jobId: string,
  bayId: string,
  fromAt: number,
  toAt: number,
  more: Partial<StayView> = {},
): StayView {
  return {
    jobId,
    jobNumber: 1,
    version: 1,
    status: 'booked',
    bayId,
    bayName: bayId,
    fromAt,
    toAt,
    plate: jobId.toUpperCase(),
    customerName: 'Ada Example',
    vehicleWords: '',
    position: 0,
    blocks: [],
    standing: 'kept',
    lateMin: 0,
    lack: null,
    unfetchedAt: null,
    promisedAt: toAt,
    handoverAt: toAt,
    conflict: null,
    leaving: 'dry',
    next: null,
    movable: true,
    ...more,
  }
}

/** Three bays, open 08:00 to 18:00 on three days. */
export function board(stays: StayView[]): BoardView {
  return {
    fromAt: at(0, 0),
    toAt: at(3, 0),
    nowAt: at(0, 9),
    zone: 'UTC',
    gridMin: 15,
    open: [0, 1, 2].map(day => ({ from: at(day, 8), to: at(day, 18) })),
    bays: ['a', 'b', 'c'].map(id => ({ id, name: id, capabilities: [], closures: [] })),
    stays,
    slips: [],
    profiles: {},
  }
}
