import type { MenuItemConstructorOptions } from 'electron'
import { describe, expect, it, vi } from 'vitest'
import { menuTemplate } from '../../../main/hosts/desktop/menu.ts'

const items = (template: MenuItemConstructorOptions[]): MenuItemConstructorOptions[] =>
  template.flatMap(item => [item, ...(Array.isArray(item.submenu) ? items(item.submenu) : [])])

describe('the menu', () => {
  it('prints the page before it', () => {
    const print = items(menuTemplate('linux', false)).find(item => item.accelerator === 'CmdOrCtrl+P')
    const webContents = { print: vi.fn() }
    print?.click?.({} as never, { webContents } as never, {} as never)
    expect(webContents.print).toHaveBeenCalledTimes(1)
    expect(() => print?.click?.({} as never, undefined, {} as never)).not.toThrow()
  })

  it('has the tools of a developer only while developing', () => {
    const roles = (developing: boolean) => items(menuTemplate('win32', developing)).map(item => item.role)
    expect(roles(false)).not.toContain('toggleDevTools')
    expect(roles(false)).not.toContain('reload')
    expect(roles(true)).toContain('toggleDevTools')
  })

  it('quits from where each system expects it', () => {
    const roles = (platform: NodeJS.Platform) => items(menuTemplate(platform, false)).map(item => item.role)
    expect(roles('linux')).toContain('quit')
    expect(roles('darwin')[0]).toBe('appMenu')
    expect(roles('darwin')).not.toContain('quit')
  })
})
