import { say } from '../../main/domain/language/index.ts'

/** The size classes and the states of the paint, as short as a row of buttons wants them. */
export const sizes = [
  { value: 'small', label: 'S' },
  { value: 'medium', label: 'M' },
  { value: 'large', label: 'L' },
  { value: 'xl', label: say('XL') },
] as const

export const conditions = [
  { value: 'good', label: say('Good') },
  { value: 'worn', label: say('Worn') },
  { value: 'heavy', label: say('Heavy') },
] as const
