import { decimalNow, say } from '../language/index.ts'

export type ThicknessUnits = 'us' | 'metric'

/** Thickness as somebody acts on it: whole micrometres, mils to a tenth (1 mil is 25.4 µm). */
export function thicknessWords(um: number, units: ThicknessUnits): string {
  return units === 'us'
    ? say('{um} mil', { um: decimalNow((um / 25.4).toFixed(1)) })
    : say('{um} µm', { um: Math.round(um) })
}

/** What work takes off, as somebody acts on it: micrometres to a tenth, mils to a hundredth. */
export function takenOffWords(um: number, units: ThicknessUnits): string {
  return units === 'us'
    ? say('{um} mil', { um: decimalNow((um / 25.4).toFixed(2)) })
    : say('{um} µm', { um: Math.round(um * 10) / 10 })
}
