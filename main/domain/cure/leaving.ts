import type { CureProfile } from './profile.ts'

/**
 * How a car may leave. `dry`: it stays until it may get wet. `covered`: somebody has confirmed by name that it travels
 * and stands under cover until then, so that only the handover figure binds.
 */
export type Leaving = 'dry' | 'covered'

/** Minutes of cure before which the car may not leave, by the profile's least or its advised handover. */
export function leavingAge(
  profile: CureProfile,
  leaving: Leaving,
  rule: 'minimum' | 'advised' = 'minimum',
): number {
  const handover = rule === 'advised' ? profile.handoverAdvisedMin : profile.handoverMin
  return leaving === 'dry' ? Math.max(handover, profile.keepDryMin) : handover
}
