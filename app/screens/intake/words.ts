import type { Defect } from '../../../main/api/views.ts'
import type { DefectKind, Severity, WaxState } from '../../../main/domain/intake/words.ts'
import { decimalNow, say } from '../../../main/domain/language/index.ts'

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
  light: say('Light||a mark'),
  moderate: say('Moderate'),
  severe: say('Severe'),
}

/** What of wax was found, among other words. */
export const waxText: Readonly<Record<WaxState, string>> = {
  'not asked': say('not asked'),
  none: say('none||wax'),
  waxed: say('waxed'),
}

/** How bad a mark is, among other words. */
export const markText: Readonly<Record<Severity, string>> = {
  light: say('light||a mark'),
  moderate: say('moderate'),
  severe: say('severe'),
}

/** `Chip, light, Bonnet`. */
export function defectWords({ kind, severity, panel }: Pick<Defect, 'kind' | 'severity' | 'panel'>): string {
  return `${kindWords[kind]}, ${markText[severity]}, ${say(panel)}`
}

/** Thickness as somebody acts on it: whole micrometres, mils to a tenth. */
export function thicknessWords(um: number, units: 'us' | 'metric'): string {
  return units === 'us'
    ? say('{um} mil', { um: decimalNow((um / 25.4).toFixed(1)) })
    : say('{um} µm', { um: Math.round(um) })
}
