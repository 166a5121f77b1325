export { type CarChange, changesOf, presentCost, together } from './changes.ts'
export { acceptedPlan, objections } from './objections.ts'
export { type Going, mayRelay, type RelayTask, type Rush, relayTask } from './relayTask.ts'
export { curingAt, type Supposition, suppose } from './suppose.ts'
