import type { Severity } from '../../../main/domain/intake/words.ts'
import { say } from '../../../main/domain/language/index.ts'

export const severityWords: Readonly<Record<Severity, string>> = {
  light: say('Light||a mark'),
  moderate: say('Moderate'),
  severe: say('Severe'),
}
