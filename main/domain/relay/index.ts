export { type CarChange, changesOf, together } from './changes.ts'
export { acceptedPlan, objections } from './objections.ts'
export { mayRelay, type RelayTask, type Rush, relayTask } from './relayTask.ts'
export { type Supposition, suppose } from './suppose.ts'
