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
