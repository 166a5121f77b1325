import { wallWords } from '../../main/domain/calendar/index.ts'

/**
 * A time of day as somebody types it, in minutes after midnight (0..1440); null when it is none: "8", "8:30", "0830",
 * "17.45", "5 pm", "8 Uhr", "24:00".
 */
export function readWall(text: string): number | null {
  const parts = /^(\d{1,2})(?:[:.h ]?(\d{2}))? ?([ap])?\.?m?\.?(?:uhr)?$/.exec(text.trim().toLowerCase())
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

/** As `readWall` reads it back: "08:30". */
export function wallText(minute: number): string {
  return wallWords(minute)
}
