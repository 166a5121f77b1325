import { say } from '../../main/domain/language/index.ts'
/** How many days a picture shows. */
export const daySpans = [
  { value: '1', label: say('Day') },
  { value: '3', label: say('Three days') },
  { value: '7', label: say('Week') },
]
