/**
 * Why something was thrown away, and what that says of how long an opened bottle keeps. A bottle that crystallised,
 * skinned over or went cloudy before its date had a shorter life than it was given; one spilt, used up or thrown away on
 * its date says only that it was good until then.
 */
import { say, word } from '../language/index.ts'
import { type Kept, keptShares } from './survival.ts'

export const DISCARD_REASONS = ['crystallised', 'skinned', 'cloudy', 'spilt', 'expired', 'other'] as const
export type DiscardReason = (typeof DISCARD_REASONS)[number]

/** The reasons by which the content itself went off. */
export const WENT_OFF: readonly DiscardReason[] = ['crystallised', 'skinned', 'cloudy']

const words: Record<DiscardReason, string> = {
  crystallised: word('crystallised'),
  skinned: word('skinned over'),
  cloudy: word('cloudy'),
  spilt: word('spilt'),
  expired: word('past its date'),
  other: '',
}

/** The reason as the ledger says it; empty where "other" came without a word. */
export function discardWords(reason: DiscardReason, note: string): string {
  return [say(words[reason]), note.trim()].filter(Boolean).join(': ')
}

export interface ShorterLife {
  /** Days the opened life might be set to: fewer than it has. */
  readonly days: number
  readonly wentOff: number
  readonly bottles: number
}

// Common practice, no source: one bad bottle is chance, and one opened bottle in ten gone off by its date is bearable.
const LEAST_WENT_OFF = 3
const BEARABLE = 0.1

/**
 * The opened life in whole days that these bottles suggest, by which at most one in ten has gone off; null where what it
 * has now (null: no limit) is borne out, or too few went off to tell. Never longer than the present one, at least a day.
 */
export function shorterLife(bottles: readonly Kept[], lifeDays: number | null): ShorterLife | null {
  const most = lifeDays ?? Number.POSITIVE_INFINITY
  const wentOff = bottles.filter(({ ended, days }) => ended && days <= most).length
  if (wentOff < LEAST_WENT_OFF) return null
  const tooMany = keptShares(bottles).find(({ share }) => 1 - share > BEARABLE)
  if (!tooMany || tooMany.days > most) return null
  const days = Math.max(1, tooMany.days - 1)
  return days < most ? { days, wentOff, bottles: bottles.length } : null
}
