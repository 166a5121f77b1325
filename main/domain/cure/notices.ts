import type { ClockMilestones } from './clockMilestones.ts'

export type NoticeKind = 'topper opens' | 'topper closes soon' | 'topper closed' | 'release'

export interface Notice {
  readonly kind: NoticeKind
  /** When it was due. */
  readonly at: number
  /** More than a few minutes ago: the computer slept through it. */
  readonly late: boolean
}

/** A topper window about to close is told so long before. */
export const closingSoonMin = 20
/** More than this behind, a notice says that it is late. */
const lateAfterMin = 5

/**
 * The notices that fell due after `seenAt` and up to `nowAt`, in order of time. A caller that keeps `nowAt` as the
 * next `seenAt` tells each once, also after a sleep. Where the warning that a topper window closes was slept through
 * until after it had closed, it is told as closed; so is one that closes before it opens, which is never told as open.
 */
export function noticesSince(milestones: ClockMilestones, seenAt: number, nowAt: number): Notice[] {
  const notices: Notice[] = []
  const tell = (kind: NoticeKind, dueAt: number | undefined, at = dueAt) => {
    if (dueAt !== undefined && at !== undefined && dueAt > seenAt && dueAt <= nowAt)
      notices.push({ kind, at, late: nowAt - at > lateAfterMin })
  }
  const opensAt = milestones.topperOpens?.at
  const closesAt = milestones.topperCloses?.at
  const shut = closesAt !== undefined && (opensAt === undefined || closesAt < opensAt)
  if (shut) tell('topper closed', closesAt)
  else tell('topper opens', opensAt)
  if (closesAt !== undefined && !shut) {
    const warnAt = Math.max(opensAt ?? 0, closesAt - closingSoonMin)
    if (nowAt < closesAt) tell('topper closes soon', warnAt)
    else tell('topper closed', warnAt, closesAt)
  }
  tell('release', milestones.handoverSafe?.at)
  return notices.sort((a, b) => a.at - b.at)
}
