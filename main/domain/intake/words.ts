/** The fixed words of an intake: in code, in the database and over the wire alike. */

import { word } from '../language/index.ts'

/** The shapes a car is drawn in. */
export const bodyShapes = [word('saloon'), word('hatchback'), word('estate'), word('off-roader')] as const
export type BodyShape = (typeof bodyShapes)[number]

/** What a finger marks on the drawing. */
export const defectKinds = [
  'swirls',
  'scratch',
  'chip',
  'etching',
  'dent',
  'overspray',
  'repaint',
  'edge',
  'oxidation',
] as const
export type DefectKind = (typeof defectKinds)[number]

export const severities = ['light', 'moderate', 'severe'] as const
export type Severity = (typeof severities)[number]

/** Whether wax or a sealant lies on the paint, as the owner says or the water shows. */
export const waxStates = ['not asked', 'none', 'waxed'] as const
export type WaxState = (typeof waxStates)[number]

/** What a surface is to a gloss meter; each wants its own calibration. */
export const substrates = ['gloss', 'satin', 'matte', 'film', 'matte film', 'plastic'] as const
