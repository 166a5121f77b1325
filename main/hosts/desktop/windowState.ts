import { readFileSync, writeFileSync } from 'node:fs'
import { join } from 'node:path'
import type { BrowserWindow, Rectangle } from 'electron'

export interface WindowState {
  bounds: Rectangle
  maximized: boolean
}

const file = (dir: string) => join(dir, 'window.json')

function isRectangle(value: unknown): value is Rectangle {
  if (typeof value !== 'object' || value === null) return false
  return ['x', 'y', 'width', 'height'].every(key => Number.isInteger((value as Record<string, unknown>)[key]))
}

/**
 * Where the window was when it was last closed; null where nothing readable was kept, or where it would now lie off
 * every screen (a monitor has gone).
 */
export function readWindowState(dir: string, screens: Rectangle[]): WindowState | null {
  let kept: Partial<WindowState> | null
  try {
    kept = JSON.parse(readFileSync(file(dir), 'utf8')) as Partial<WindowState> | null
  } catch {
    return null
  }
  const bounds = kept?.bounds
  if (!isRectangle(bounds)) return null
  // Enough of it must be on one screen to take hold of.
  const reachable = screens.some(screen => {
    const overlap = (at: number, length: number, from: number, extent: number) =>
      Math.min(at + length, from + extent) - Math.max(at, from)
    return (
      overlap(bounds.x, bounds.width, screen.x, screen.width) >= 200 &&
      overlap(bounds.y, bounds.height, screen.y, screen.height) >= 200 &&
      bounds.y >= screen.y
    )
  })
  return reachable ? { bounds, maximized: kept?.maximized === true } : null
}

/** Keeps where the window is; a folder that cannot be written costs only the memory of it. */
export function keepWindowState(dir: string, window: BrowserWindow): void {
  const state: WindowState = { bounds: window.getNormalBounds(), maximized: window.isMaximized() }
  try {
    writeFileSync(file(dir), JSON.stringify(state))
  } catch (error) {
    console.error(`The window's place was not kept: ${(error as Error).message}`)
  }
}
