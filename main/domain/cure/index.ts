export { checkProfile } from './checkProfile.ts'
export { advisedByPracticeMin, allFrom, commonPracticeProfile, leastByPracticeMin } from './commonPractice.ts'
export { ageAtDegree, type Band, type CureCurve, cureCurve, degreeAt } from './degree.ts'
export {
  type MilestoneAges,
  type MilestoneName,
  type Milestones,
  milestoneAges,
  milestoneNames,
  milestones,
} from './milestones.ts'
export {
  type CureProfile,
  type Figure,
  type FigureSource,
  type ForcedCureRow,
  figures,
  type RateRule,
} from './profile.ts'
