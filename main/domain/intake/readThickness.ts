/** Thickness readings as they are pasted from a gauge or a list, a line a panel or a spot. */
import { say } from '../language/index.ts'
import { checkThickness } from '../measure/index.ts'
import { convert } from '../measure/units.ts'
import { refuse } from '../refusal.ts'
import { type PanelName, panelNames } from '../shop/index.ts'

export interface SpotReading {
  readonly panel: PanelName
  readonly spot: number
  readonly um: number
}

/** What a gauge is set to. */
export type GaugeUnit = 'um' | 'mil'

const most = 500

/** What others call the same panel. */
const otherNames: Readonly<Record<string, PanelName>> = {
  hood: 'Bonnet',
  trunk: 'Boot lid',
  'trunk lid': 'Boot lid',
  tailgate: 'Boot lid',
  boot: 'Boot lid',
  'left fender': 'Left wing',
  'right fender': 'Right wing',
  'left door': 'Left doors',
  'right door': 'Right doors',
  'left quarter panel': 'Left quarter',
  'right quarter panel': 'Right quarter',
}

/** The panel of this name, capitals and spaces aside; null where there is none. */
export function panelCalled(name: string): PanelName | null {
  const folded = name.trim().toLowerCase().replaceAll(/\s+/gu, ' ')
  // A list may come in the words of the screens as well as in the app's own.
  const own = panelNames.find(panel => [panel, say(panel)].some(each => each.toLowerCase() === folded))
  return own ?? otherNames[folded] ?? null
}

/**
 * Lines of a panel and its readings, such as `Bonnet 118 121 119` or `Bonnet;1;118`: between tabs or semicolons, where a
 * comma is a decimal one, else between commas or spaces. With `spot` as a column of its own, say so in a first line
 * `panel;spot;um`. Spots are otherwise counted on from `readings`, those there already.
 * @throws Refusal naming the line: `panel-unknown`, `line-bad`, `thickness-bad`, `too-many` beyond 500 readings.
 */
export function readThickness(
  text: string,
  unit: GaugeUnit,
  readings: readonly SpotReading[] = [],
): SpotReading[] {
  const lines = text.replace(/^\uFEFF/, '').split(/\r\n|\n|\r/)
  const withSpot = /\bspot\b/i.test(lines[0] ?? '')
  const found: SpotReading[] = []
  const spots = new Map<string, number>()
  for (const { panel, spot } of readings) spots.set(panel, Math.max(spot, spots.get(panel) ?? 0))
  for (const [i, line] of lines.entries()) {
    if (line.trim() === '' || (i === 0 && /^\W*(panel|spot)\b/i.test(line))) continue
    const field = `lines.${i + 1}`
    const { name, values } = cut(line, field)
    const panel =
      panelCalled(name) ??
      refuse(
        'panel-unknown',
        { [field]: name },
        say('Line {line}: "{name}" is no panel; write one such as Bonnet or Left wing.', {
          line: i + 1,
          name,
        }),
      )
    if (withSpot && values.length !== 2)
      refuse(
        'line-bad',
        { [field]: line },
        say('Line {line}: write a panel, a spot and one reading.', { line: i + 1 }),
      )
    for (const value of withSpot ? values.slice(1) : values) {
      const spot = withSpot ? spotOf(values[0]!, field, i + 1) : (spots.get(panel) ?? 0) + 1
      spots.set(panel, Math.max(spot, spots.get(panel) ?? 0))
      const um = unit === 'mil' ? convert(value, 'mil', 'um') : value
      found.push({ panel, spot, um: checkThickness(Math.round(um * 10) / 10, field) })
    }
    if (readings.length + found.length > most)
      refuse(
        'too-many',
        { [field]: line },
        say('More than {most} readings; leave out what is not needed.', { most }),
      )
  }
  if (found.length === 0)
    refuse(
      'line-bad',
      { lines: text.slice(0, 100) },
      say('Nothing to read there: write a panel and its readings, such as Bonnet 118 121.'),
    )
  return found
}

function cut(line: string, field: string): { name: string; values: number[] } {
  const tabbed = /[\t;]/.test(line)
  // A name may have a space in it, a number may not: the first number ends the name.
  const [, name = '', rest = ''] = /^\s*"?(\D+?)"?[\s,;]*((?:\d|$).*)$/.exec(line) ?? []
  const parts = rest.split(tabbed ? /[\t;]+/ : /[\s,]+/).map(part => part.trim())
  const values = parts.filter(part => part !== '').map(part => numberOf(part, tabbed))
  if (name === '' || values.length === 0 || values.some(value => value === null))
    refuse(
      'line-bad',
      { [field]: line },
      say('Line {line}: write a panel and its readings, such as Bonnet 118 121.', {
        line: field.replace('lines.', ''),
      }),
    )
  return { name, values: values as number[] }
}

function numberOf(part: string, decimalComma: boolean): number | null {
  const text = decimalComma ? part.replace(',', '.') : part
  return /^\d{1,5}(\.\d{1,3})?$/.test(text) ? Number(text) : null
}

function spotOf(value: number, field: string, line: number): number {
  if (!Number.isSafeInteger(value) || value < 1 || value > 99)
    refuse(
      'line-bad',
      { [field]: value },
      say('Line {line}: {value} is no spot; count them from 1 to 99.', { line, value }),
    )
  return value
}
