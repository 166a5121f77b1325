import { say } from '../../main/domain/language/index.ts'

/** What the customer of a job is told of, by the kind it is kept under. */
export const toldWords = {
  confirmation: say('Confirmation'),
  dayBefore: say('The day before'),
  ready: say('The car is ready'),
  promiseMoved: say('The promise has moved'),
} as const
