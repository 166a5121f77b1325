/** The fixed words a shop is described in: in code, in the database and over the wire alike. `word` marks those shown as they are. */

import { say, word } from '../language/index.ts'

/** What a bay can be used for. */
export const capabilities = ['wet', 'polish', 'clean', 'cure'] as const
export type Capability = (typeof capabilities)[number]

/** What somebody of the crew can do; `outside` is whatever a shop gives to hands from outside: dents, leather, film. */
export const skills = ['wash', 'polish', 'coat', 'outside'] as const
export type Skill = (typeof skills)[number]

/** Of the paint; satin, matte and film are never polished. */
export const finishes = [word('gloss'), word('satin'), word('matte'), word('film')] as const
export type Finish = (typeof finishes)[number]

/** What one panel is, where it differs from the rest of the car; a fresh respray is gloss once it has rested. */
export const panelFinishes = [
  word('gloss'),
  word('single stage'),
  word('satin'),
  word('matte'),
  word('film'),
  word('matte film'),
  word('respray'),
  word('plastic'),
  word('glass'),
  word('wheel'),
] as const
export type PanelFinish = (typeof panelFinishes)[number]

/** What lies over the colour: nothing, in a single stage, where the pad takes colour along. */
export const paintSystems = [word('clear-coated'), word('single-stage'), word('unknown')] as const
export type PaintSystem = (typeof paintSystems)[number]

/** Whom the shop works for. */
export const customerKinds = [word('person'), word('firm'), word('fleet')] as const
export type CustomerKind = (typeof customerKinds)[number]

/** How much of the paint a booking is for. */
export const scopes = ['whole', 'front', 'top'] as const
export type Scope = (typeof scopes)[number]

export const conditions = [word('good'), word('worn'), word('heavy')] as const
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

const stageNames: Readonly<Record<Stage, string>> = {
  prepare: word('prepare||stage'),
  dry: word('dry||stage'),
  test: word('test||stage'),
  correct: word('correct||stage'),
  rinse: word('rinse||stage'),
  wipe: word('wipe||stage'),
  coat: word('coat||stage'),
  level: word('level||stage'),
  topper: word('topper||stage'),
  finish: word('finish||stage'),
}

/** A stage within a sentence. */
export function stageWords(stage: Stage): string {
  return say(stageNames[stage])
}

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

const kindNames: Readonly<Record<ProductKind, string>> = {
  wash: word('wash||product kind'),
  decontaminant: word('decontaminant||product kind'),
  compound: word('compound||product kind'),
  polish: word('polish||product kind'),
  wipe: word('wipe||product kind'),
  coating: word('coating||product kind'),
  topper: word('topper||product kind'),
  consumable: word('consumable||product kind'),
}

/** A kind of product within a sentence. */
export function kindWords(kind: ProductKind): string {
  return say(kindNames[kind])
}

/** What a coating is made for. Of each family a car gets one coating in a visit. */
export const coatingFamilies = ['paint', 'wheels', 'glass', 'trim', 'interior'] as const
export type CoatingFamily = (typeof coatingFamilies)[number]

const familyNames: Readonly<Record<CoatingFamily, string>> = {
  paint: word('paint||coating family'),
  wheels: word('wheels||coating family'),
  glass: word('glass||coating family'),
  trim: word('trim||coating family'),
  interior: word('interior||coating family'),
}

/** What a coating is made for, in a word. */
export function familyWords(family: CoatingFamily): string {
  return say(familyNames[family])
}

/** What the screens show lengths, volumes and temperatures in. */
export const unitSystems = ['metric', 'us'] as const
export type UnitSystem = (typeof unitSystems)[number]

/** What a promise counts from a cure profile: its minimum handover or its advised one. */
export const handoverRules = ['minimum', 'advised'] as const
export type HandoverRule = (typeof handoverRules)[number]

/** What a shop lends with a booking, from the drop-off to the handover, each thing to one at a time. */
export const lentKinds = [word('loan car'), word('key box'), word('covered place')] as const
export type LentKind = (typeof lentKinds)[number]
