import { clockHoursNow, say } from '../language/index.ts'
import { wallMinuteOf } from './instants.ts'

/**
 * A time of day in minutes after midnight as the shop writes it: 480 is "08:00" or "8:00 am". The end of a day, 1440, is
 * "24:00" or "midnight".
 */
export function wallWords(minute: number): string {
  const two = (n: number) => String(n).padStart(2, '0')
  const [hour, rest] = [Math.floor(minute / 60), two(minute % 60)]
  if (clockHoursNow() === 24) return `${two(hour)}:${rest}`
  return minute === 1440 ? say('midnight') : `${hour % 12 || 12}:${rest}\u00a0${half(hour)}`
}

/** A full hour where there is little room, as over the lines of an axis: "08" or "8 am". */
export function hourWords(hour: number): string {
  return clockHoursNow() === 24 ? String(hour).padStart(2, '0') : `${hour % 12 || 12}\u00a0${half(hour)}`
}

/** What the shop's clock shows at a point in time: "14:05" or "2:05 pm". */
export function clockWords(at: number, zone: string): string {
  return wallWords(wallMinuteOf(at, zone))
}

function half(hour: number): string {
  return hour % 24 < 12 ? say('am||before noon') : say('pm||after noon')
}
