import { say } from './say.ts'

/**
 * A word out of the shop's data: said where it is one of the app's own, such as a finish or a panel, and as it stands
 * where somebody typed it.
 */
export function sayKept(text: unknown): string {
  const kept = String(text)
  // A message would take these signs for its own.
  return /['{}|]/.test(kept) ? kept : say(kept)
}
