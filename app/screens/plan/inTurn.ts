import { say } from '../../../main/domain/language/index.ts'

/** Bays in the order a car stands in them: "Bay 1, then Bay 3". */
export const inTurn = (bays: readonly string[]) =>
  bays.reduce((before, next) => (before ? say('{before}, then {next}', { before, next }) : next), '')
