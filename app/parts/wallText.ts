import { wallWords } from '../../main/domain/calendar/index.ts'

/**
 * A time of day as somebody types it, in minutes after midnight (0..1440); null when it is none: "8", "8:30", "0830",
 * "17.45", "5 pm", "8 Uhr", "24:00", "midnight" for the end of a day.
 */
export function readWall(text: string): number | null {
  const typed = text.trim().toLowerCase().replaceAll('\u00a0', ' ')
  if (typed === 'midnight' || typed === 'mitternacht') return 1440
  const parts = /^(\d{1,2})(?:[:.h ]?(\d{2}))? ?([ap])?\.?m?\.?(?:uhr)?$/.exec(typed)
  if (!parts) return null
  let hour = Number(parts[1])
  const minute = Number(parts[2] ?? 0)
  if (parts[3]) {
    if (hour < 1 || hour > 12) return null
    hour = (hour % 12) + (parts[3] === 'p' ? 12 : 0)
  }
  const wall = hour * 60 + minute
  return minute > 59 || wall > 1440 ? null : wall
}

/** As `readWall` reads it back: "08:30" or "8:30 am". */
export function wallText(minute: number): string {
  return wallWords(minute)
}
