import { mkdtempSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { readWindowState } from '../../../main/hosts/desktop/windowState.ts'

describe('the place of the window', () => {
  let dir = ''
  beforeAll(() => {
    dir = mkdtempSync(join(tmpdir(), 'lustrum-place-'))
  })
  afterAll(() => rmSync(dir, { recursive: true, force: true }))

  const left = { x: -1920, y: 0, width: 1920, height: 1040 }
  const right = { x: 0, y: 0, width: 1920, height: 1040 }
  const kept = (bounds: unknown, maximized: unknown = false) => {
    writeFileSync(join(dir, 'window.json'), JSON.stringify({ bounds, maximized }))
    return (screens = [left, right]) => readWindowState(dir, screens)
  }

  it('is none before the first close', () => expect(readWindowState(dir, [right])).toBeNull())

  it('is what was kept, maximized or not', () => {
    const bounds = { x: -1800, y: 40, width: 1400, height: 900 }
    expect(kept(bounds)()).toEqual({ bounds, maximized: false })
    expect(kept(bounds, true)()).toEqual({ bounds, maximized: true })
    expect(kept(bounds, 'yes')()).toEqual({ bounds, maximized: false })
  })

  it('is forgotten where its screen has gone, or its title bar is out of reach', () => {
    expect(kept({ x: -1800, y: 40, width: 1400, height: 900 })([right])).toBeNull()
    expect(kept({ x: 1900, y: 40, width: 1400, height: 900 })()).toBeNull()
    expect(kept({ x: 100, y: -300, width: 1400, height: 900 })()).toBeNull()
    expect(kept({ x: 100, y: 1000, width: 1400, height: 900 })()).toBeNull()
  })

  it.each([null, 'left', {}, { x: 1, y: 1, width: 1000 }, { x: 1.5, y: 1, width: 1000, height: 900 }])(
    'is forgotten where what was kept is %j',
    bounds => expect(kept(bounds)()).toBeNull(),
  )

  it('is forgotten where the file is no JSON', () => {
    writeFileSync(join(dir, 'window.json'), '{')
    expect(readWindowState(dir, [right])).toBeNull()
    writeFileSync(join(dir, 'window.json'), 'null')
    expect(readWindowState(dir, [right])).toBeNull()
  })
})
