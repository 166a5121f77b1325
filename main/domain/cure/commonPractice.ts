import { type CureProfile, type Figure, type FigureSource, figures } from './profile.ts'

/** The handover waits at least this long after the coat unless the data sheet says otherwise. Common practice. */
export const leastByPracticeMin = 4 * 60
/** The handover is advised 12 to 24 h after the coat. Common practice. */
export const advisedByPracticeMin = { from: 12 * 60, to: 24 * 60 }

/** Relative humidity a coat is laid and begins to cure in where its sheet gives none. Common practice, no source. */
const humidityByPractice = { minPercent: 40, maxPercent: 65 }

const dayMin = 24 * 60

/**
 * The profile of a coating whose data sheet is silent, every figure marked common practice: handover 12 h after the coat
 * at the earliest and advised at 24 h, sooner only where a sheet says so; 85 % cured at the end of those first 12 to 24 h,
 * fully after 7 to 10 days. Where practice has no figure of its own the cautious one stands: the car is not moved for
 * 4 h, stays dry a day and unwashed until the early full cure.
 */
export function commonPracticeProfile(): CureProfile {
  return {
    tackFreeMin: leastByPracticeMin,
    recoat: null,
    topper: null,
    windowRows: [],
    handoverMin: advisedByPracticeMin.from,
    handoverAdvisedMin: advisedByPracticeMin.to,
    keepDryMin: dayMin,
    firstWashMin: 7 * dayMin,
    firstPeriod: { earlyMin: advisedByPracticeMin.from, lateMin: advisedByPracticeMin.to, degree: 0.85 },
    fullCure: { earlyMin: 7 * dayMin, lateMin: 10 * dayMin },
    temperature: { minC: 10, maxC: 30 },
    humidity: humidityByPractice,
    referenceC: 20,
    rate: { rule: 'doubling' },
    forcedCure: [],
    missedRecoat: '',
    sources: allFrom('common practice'),
  }
}

/** Every figure with one source, as a start to mark the others from. */
export function allFrom(source: FigureSource): Record<Figure, FigureSource> {
  return Object.fromEntries(figures.map(figure => [figure, source])) as Record<Figure, FigureSource>
}
