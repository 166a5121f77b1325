import type { Weibull } from '../../../../main/domain/upkeep/life/weibull.ts'

/** The life of this shape that has `level` of its lives still working at `age`: S(t) = exp(-(t/scale)^shape) solved for scale. */
export function weibullThrough(age: number, level: number, shape: number): Weibull {
  return { shape, scale: age / (-Math.log(level)) ** (1 / shape) }
}
