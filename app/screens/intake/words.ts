import type { Defect } from '../../../main/api/views.ts'
import type { DefectKind, Severity } from '../../../main/domain/intake/words.ts'
import { say } from '../../../main/domain/language/index.ts'

export const kindWords: Readonly<Record<DefectKind, string>> = {
  swirls: say('Swirls'),
  scratch: say('Scratch'),
  chip: say('Chip'),
  etching: say('Etching'),
  dent: say('Dent'),
  overspray: say('Overspray'),
  repaint: say('Repaint'),
  edge: say('Sharp edge'),
  oxidation: say('Oxidation'),
}

export const severityWords: Readonly<Record<Severity, string>> = {
  light: say('Light'),
  moderate: say('Moderate'),
  severe: say('Severe'),
}

/** `Chip, light, Bonnet`. */
export function defectWords({ kind, severity, panel }: Pick<Defect, 'kind' | 'severity' | 'panel'>): string {
  return `${kindWords[kind]}, ${severity}, ${panel}`
}

/** Thickness as somebody acts on it: whole micrometres, mils to a tenth. */
export function thicknessWords(um: number, units: 'us' | 'metric'): string {
  return units === 'us'
    ? say('{um} mil', { um: (um / 25.4).toFixed(1) })
    : say('{um} µm', { um: Math.round(um) })
}
