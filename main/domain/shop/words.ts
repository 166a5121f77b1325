import { word } from '../language/index.ts'
/** The fixed words a shop is described in: in code, in the database and over the wire alike. */

/** What a bay can be used for. */
export const capabilities = ['wet', 'polish', 'clean', 'cure'] as const
export type Capability = (typeof capabilities)[number]

/** What somebody of the crew can do; `outside` is whatever a shop gives to hands from outside: dents, leather, film. */
export const skills = ['wash', 'polish', 'coat', 'outside'] as const
export type Skill = (typeof skills)[number]

/** Of the paint; satin, matte and film are never polished. */
export const finishes = ['gloss', 'satin', 'matte', 'film'] as const
export type Finish = (typeof finishes)[number]

/** What one panel is, where it differs from the rest of the car; a fresh respray is gloss once it has rested. */
export const panelFinishes = [
  'gloss',
  word('single stage'),
  'satin',
  'matte',
  'film',
  word('matte film'),
  'respray',
  'plastic',
  'glass',
  'wheel',
] as const
export type PanelFinish = (typeof panelFinishes)[number]

/** What lies over the colour: nothing, in a single stage, where the pad takes colour along. */
export const paintSystems = ['clear-coated', 'single-stage', 'unknown'] as const
export type PaintSystem = (typeof paintSystems)[number]

/** Whom the shop works for. */
export const customerKinds = ['person', 'firm', 'fleet'] as const
export type CustomerKind = (typeof customerKinds)[number]

/** How much of the paint a booking is for. */
export const scopes = ['whole', 'front', 'top'] as const
export type Scope = (typeof scopes)[number]

export const conditions = ['good', 'worn', 'heavy'] as const
export type Condition = (typeof conditions)[number]

/**
 * In the order in which the steps of several treatments are laid out. `dry` leaves a dry car, masked where the work wants
 * that; `test` is a test spot, whose result the rest is asked about again; `rinse` washes off what the correction left
 * and dries again. `level` is part of the coat step before it: the wet
 * layer evened out and checked under the lamp, panel by panel.
 */
export const stages = [
  'prepare',
  'dry',
  'test',
  'correct',
  'rinse',
  'wipe',
  'coat',
  'level',
  'topper',
  'finish',
] as const
export type Stage = (typeof stages)[number]

/** When what is looked after around the work is due: as the car comes, before anything is laid, before it goes. */
export const checkMoments = ['arrival', 'coat', 'handover'] as const
export type CheckMoment = (typeof checkMoments)[number]

/**
 * What is done where a step waited too long for the next: the step again, its surface abraded by hand, or what it left
 * taken off and the step done again.
 */
export const missedWorks = ['again', 'abrade', 'redo'] as const
export type MissedWork = (typeof missedWorks)[number]

export const productKinds = [
  'wash',
  'decontaminant',
  'compound',
  'polish',
  'wipe',
  'coating',
  'topper',
  'consumable',
] as const
export type ProductKind = (typeof productKinds)[number]

/** What a coating is made for. Of each family a car gets one coating in a visit. */
export const coatingFamilies = ['paint', 'wheels', 'glass', 'trim', 'interior'] as const
export type CoatingFamily = (typeof coatingFamilies)[number]

/** What the screens show lengths, volumes and temperatures in. */
export const unitSystems = ['metric', 'us'] as const
export type UnitSystem = (typeof unitSystems)[number]

/** What a promise counts from a cure profile: its minimum handover or its advised one. */
export const handoverRules = ['minimum', 'advised'] as const
export type HandoverRule = (typeof handoverRules)[number]

/** What a shop lends with a booking, from the drop-off to the handover, each thing to one at a time. */
export const lentKinds = ['loan car', 'key box', 'covered place'] as const
export type LentKind = (typeof lentKinds)[number]
