import { decimalNow, say } from '../language/index.ts'

/** Thickness as somebody acts on it: whole micrometres, mils to a tenth (1 mil is 25.4 µm). */
export function thicknessWords(um: number, units: 'us' | 'metric'): string {
  return units === 'us'
    ? say('{um} mil', { um: decimalNow((um / 25.4).toFixed(1)) })
    : say('{um} µm', { um: Math.round(um) })
}
