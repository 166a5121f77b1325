export { type SizeClass, sizeClasses } from '../vehicle/index.ts'
export { bayFeatures, checkOffers, meetsNeeds, needsKey, needsOf } from './bayNeeds.ts'
export { type CarCheck, carChecksOf, checkCarChecks, coatChecks, washChecks } from './carChecks.ts'
export {
  type ConditionFactors,
  checkBay,
  checkConditionFactors,
  checkCrewMember,
  checkGrid,
  checkShop,
  gridChoices,
  usualConditionFactors,
} from './checkShop.ts'
export {
  checkTreatment,
  type Treatment,
  type TreatmentProduct,
  type TreatmentStep,
} from './checkTreatment.ts'
export {
  type CarOver,
  checkPanels,
  laidOver,
  overWords,
  type PanelNoted,
  panelNames,
  scopeWords,
  shareOf,
} from './panels.ts'
export { starterProducts, starterTreatments } from './starters.ts'
export { checkNote, checkText, checkUnique } from './text.ts'
export {
  type Capability,
  type CheckMoment,
  type CoatingFamily,
  type Condition,
  capabilities,
  checkMoments,
  coatingFamilies,
  conditions,
  type Finish,
  finishes,
  type HandoverRule,
  handoverRules,
  type MissedWork,
  missedWorks,
  type PanelFinish,
  type ProductKind,
  panelFinishes,
  productKinds,
  type Scope,
  type Skill,
  type Stage,
  scopes,
  skills,
  stages,
  type UnitSystem,
  unitSystems,
} from './words.ts'
