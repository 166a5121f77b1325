export {
  type Breach,
  breachesOf,
  type PaintRule,
  type PaintStep,
  type PanelState,
  paintRules,
  splitOf,
} from './forbids.ts'
export { systemCautions } from './systemCautions.ts'
export { toolCautions } from './toolCautions.ts'
