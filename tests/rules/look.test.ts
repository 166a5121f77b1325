import { readFileSync } from 'node:fs'
import { expect, test } from 'vitest'
import { trackedFiles } from './trackedFiles.ts'

const sheets = trackedFiles()
  .filter(path => /^app\/.*\.css$/.test(path))
  .map(path => ({ path, text: readFileSync(new URL(`../../${path}`, import.meta.url), 'utf8') }))

/** The hue of a colour written #rrggbb, in degrees; null for a grey. */
function hueOf(hex: string): number | null {
  const [r, g, b] = [1, 3, 5].map(at => Number.parseInt(hex.slice(at, at + 2), 16)) as [
    number,
    number,
    number,
  ]
  const most = Math.max(r, g, b)
  const range = most - Math.min(r, g, b)
  if (range < 24) return null
  const sixth = most === r ? (g - b) / range : most === g ? 2 + (b - r) / range : 4 + (r - g) / range
  return (sixth * 60 + 360) % 360
}

test('a sheet takes its type sizes from the one set', () => {
  const others = sheets.flatMap(({ path, text }) =>
    [...text.matchAll(/font-size: ([^;]+);/g)]
      .filter(([, size]) => !/^(var\(--text-(xs|s|m|l|xl|xxl)\)|inherit|clamp\(.*)$/.test(size ?? ''))
      .map(([whole]) => `${path}: ${whole}`),
  )
  expect(sheets.length).toBeGreaterThan(20)
  expect(others).toEqual([])
})

test('no sheet has a purple', () => {
  const purples = sheets.flatMap(({ path, text }) =>
    [...text.matchAll(/#[0-9a-f]{6}\b/g)]
      .filter(([hex]) => {
        const hue = hueOf(hex)
        return hue !== null && hue > 235 && hue < 320
      })
      .map(([hex]) => `${path}: ${hex}`),
  )
  expect(purples).toEqual([])
  expect(hueOf('#5b53c8')).toBeCloseTo(244, 0)
})

/** The one scale of spaces, in rem; 0 and auto are none. */
const spaces = /^(0|auto|-?(0\.25|0\.5|0\.75|1|1\.5|2)rem)$/

/** Figures that are geometry: `sheet: declaration`. */
const geometry = new Set([
  // 44 px for a finger, less a line of words.
  'app/parts/Chip.module.css: padding: 0.6875rem 1rem',
  'app/screens/board/PeopleRail.module.css: padding: 0.6875rem 1rem',
  // One line laid over another.
  'app/parts/pieces.module.css: margin-bottom: -1px',
  // Hairlines between the parts of a picture or a stack.
  'app/parts/Sections.module.css: gap: 2px',
  'app/parts/shelf/shelf.module.css: gap: 2px',
  'app/screens/board/layers/BayLabel.module.css: gap: 1px',
  'app/screens/customers/Customers.module.css: padding: 1px 0.5rem',
  'app/screens/plan/use/Use.module.css: gap: 2px',
  'app/screens/plan/use/Use.module.css: margin-top: 2px',
  'app/screens/plan/use/Use.module.css: padding: 2px',
  'app/screens/settings/treatments/Chain.module.css: gap: 0.125rem',
  'app/theme/controls.module.css: padding: 0.125rem',
  // A short stay keeps its plate whole.
  'app/screens/morning/DayRows.module.css: padding: 0 0.375rem',
  // Level with the fields beside it, below their labels.
  'app/screens/upkeep/due/Due.module.css: padding-top: 1.9rem',
  // A share of the window; the edges of paper.
  'app/parts/Failed.module.css: margin: 12vh auto 0',
  'app/theme/colours.css: margin: 12mm',
  'app/theme/colours.css: margin: 9mm',
])

test('a sheet takes its spaces from the one scale', () => {
  const used = new Set<string>()
  const others = sheets.flatMap(({ path, text }) =>
    [...text.matchAll(/(?<![\w-])((?:row-|column-)?gap|(?:padding|margin)(?:-[a-z-]+)?):\s*([^;]+);/g)]
      .filter(([, , value = '']) => !/calc\(|var\(/.test(value))
      .filter(([, , value = '']) => !value.split(/\s+/).every(each => spaces.test(each)))
      .map(([, name, value]) => `${path}: ${name}: ${value}`)
      .filter(each => !(geometry.has(each) && used.add(each))),
  )
  expect(others).toEqual([])
  expect([...geometry].filter(each => !used.has(each))).toEqual([])
})
