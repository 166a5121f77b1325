import type { CoatWindow } from './panels.ts'

export type WindowVerdict = 'met' | 'too early' | 'too late' | 'closes before it opens'

/** How a layer begun at `startAt` stands to the window of the coat under it. */
export function windowVerdict({ opensAt, closesAt }: CoatWindow, startAt: number): WindowVerdict {
  if (closesAt !== null && (opensAt === null || closesAt < opensAt)) return 'closes before it opens'
  if (opensAt === null || startAt < opensAt) return 'too early'
  return closesAt !== null && startAt > closesAt ? 'too late' : 'met'
}
