export { effortFactor } from './factor.ts'
export { type Effort, type FinishedVisit, learnEffort, mostLearned, type Visit } from './learn.ts'
