/** A mark and the state of the paint in words, as the screen and the paper say them. */
import { say, word } from '../language/index.ts'
import type { PanelName } from '../shop/index.ts'
import type { DefectKind, Severity, WaxState } from './words.ts'

const kinds: Readonly<Record<DefectKind, string>> = {
  swirls: word('Swirls'),
  scratch: word('Scratch'),
  chip: word('Chip'),
  etching: word('Etching'),
  dent: word('Dent'),
  overspray: word('Overspray'),
  repaint: word('Repaint'),
  edge: word('Sharp edge'),
  oxidation: word('Oxidation'),
}

const marks: Readonly<Record<Severity, string>> = {
  light: word('light||a mark'),
  moderate: word('moderate'),
  severe: word('severe'),
}

const waxes: Readonly<Record<WaxState, string>> = {
  'not asked': word('not asked'),
  none: word('none||wax'),
  waxed: word('waxed'),
}

export const kindWords = (kind: DefectKind): string => say(kinds[kind])

/** How bad a mark is, among other words. */
export const severityText = (severity: Severity): string => say(marks[severity])

/** What of wax was found, among other words. */
export const waxWords = (wax: WaxState): string => say(waxes[wax])

/** `Chip, light, Bonnet`. */
export function defectWords({
  kind,
  severity,
  panel,
}: {
  readonly kind: DefectKind
  readonly severity: Severity
  readonly panel: PanelName
}): string {
  return `${kindWords(kind)}, ${severityText(severity)}, ${say(panel)}`
}
