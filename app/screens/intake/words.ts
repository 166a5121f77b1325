import type { Defect } from '../../../main/api/views.ts'
import type { DefectKind, Severity } from '../../../main/domain/intake/words.ts'

export const kindWords: Readonly<Record<DefectKind, string>> = {
  swirls: 'Swirls',
  scratch: 'Scratch',
  chip: 'Chip',
  etching: 'Etching',
  dent: 'Dent',
  overspray: 'Overspray',
  repaint: 'Repaint',
  edge: 'Sharp edge',
  oxidation: 'Oxidation',
}

export const severityWords: Readonly<Record<Severity, string>> = {
  light: 'Light',
  moderate: 'Moderate',
  severe: 'Severe',
}

/** `Chip, light, Bonnet`. */
export function defectWords({ kind, severity, panel }: Pick<Defect, 'kind' | 'severity' | 'panel'>): string {
  return `${kindWords[kind]}, ${severity}, ${panel}`
}

/** Thickness as somebody acts on it: whole micrometres, mils to a tenth. */
export function thicknessWords(um: number, units: 'us' | 'metric'): string {
  return units === 'us' ? `${(um / 25.4).toFixed(1)} mil` : `${Math.round(um)} µm`
}
