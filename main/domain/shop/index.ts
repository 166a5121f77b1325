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
export { type FirstStep, firstWeek } from './firstWeek.ts'
export {
  type CarOver,
  checkPanels,
  laidOver,
  leftOutWords,
  overWords,
  type PanelName,
  type PanelNoted,
  panelNames,
  panelOn,
  panelsOver,
  scopeWords,
  shareOf,
  shareOfPanels,
} from './panels.ts'
export {
  checkPaperColour,
  type LogoHead,
  type PaperName,
  papers,
  readLogo,
} from './paperStyle.ts'
export { unprintedIn } from './printed.ts'
export { starterProducts, starterTreatments } from './starters.ts'
export { checkTags } from './tags.ts'
export { checkNote, checkText, checkUnique } from './text.ts'
export {
  type Capability,
  type CheckMoment,
  type CoatingFamily,
  type Condition,
  type CustomerKind,
  capabilities,
  checkMoments,
  coatingFamilies,
  conditions,
  customerKinds,
  type Finish,
  familyWords,
  finishes,
  type HandoverRule,
  handoverRules,
  kindWords,
  type LentKind,
  lentKinds,
  type MissedWork,
  missedWorks,
  type PaintSystem,
  type PanelFinish,
  type ProductKind,
  paintSystems,
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
