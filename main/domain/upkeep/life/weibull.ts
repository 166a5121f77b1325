import { say } from '../../language/index.ts'
import { refuse } from '../../refusal.ts'

/**
 * A Weibull life: the share still working at age t is S(t) = exp(-(t/scale)^shape). Shape over 1 means it wears out;
 * scale is the age by which 63.2 % are gone. (NIST/SEMATECH e-Handbook of Statistical Methods, section 8.1.6.2.)
 */
export interface Weibull {
  readonly shape: number
  readonly scale: number
}

/** The share of lives still working at an age (0..1). */
export function survival(life: Weibull, age: number): number {
  return age <= 0 ? 1 : Math.exp(-((age / life.scale) ** life.shape))
}

/** The age at which the share still working has fallen to `level` (between 0 and 1, both excluded). */
export function ageAtSurvival(life: Weibull, level: number): number {
  return conditionalAge(life, level, 0)
}

/**
 * The age at which, for one seen working at `workingAt`, the chance of still working falls to `level`: S(t)/S(a) =
 * level solved for t. It never comes before `workingAt`, and never earlier for a later `workingAt`.
 */
export function conditionalAge(life: Weibull, level: number, workingAt: number): number {
  checkLevel(level)
  if (!(workingAt >= 0))
    refuse('age-bad', { workingAt }, say('{workingAt} is not an age; use a number from 0 up.', { workingAt }))
  const spent = (workingAt / life.scale) ** life.shape
  return life.scale * (spent - Math.log(level)) ** (1 / life.shape)
}

/** Refuses a share of survivors no age can have. */
export function checkLevel(level: number, field = 'level'): void {
  if (!(level > 0 && level < 1))
    refuse(
      'level-bad',
      { [field]: level },
      say('{level} is not a share between 0 and 1; 0.9 renews when one in ten has failed.', { level }),
    )
}
