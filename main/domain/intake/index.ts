export { checkIntake, typedSignature } from './checkIntake.ts'
export { readThickness } from './readThickness.ts'
export { bodyShapes, defectKinds, severities, substrates, waxStates } from './words.ts'
