export { effortFactor } from './factor.ts'
export { type FinishedVisit, learnEffort, mostLearned, type Visit } from './learn.ts'
