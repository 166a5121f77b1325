import { resolve } from 'node:path'
import { describe, expect, it } from 'vitest'
import { startClock } from '../../main/hosts/clock.ts'
import { readOptions, usualDataDir } from '../../main/hosts/options.ts'

describe('the flags', () => {
  it('default to the window, any free port and the usual folder', () =>
    expect(readOptions([], { XDG_DATA_HOME: '/data' })).toMatchObject({
      host: 'desktop',
      port: 0,
      demo: false,
      open: true,
      restore: null,
    }))

  it('are read', () =>
    expect(
      readOptions(
        [
          '--host',
          'web',
          '--port',
          '8090',
          '--data',
          'here',
          '--demo',
          '--no-open',
          '--restore',
          'a.lustrum-copy',
        ],
        {},
      ),
    ).toEqual({
      host: 'web',
      port: 8090,
      dataDir: resolve('here'),
      demo: true,
      open: false,
      restore: resolve('a.lustrum-copy'),
    }))

  it.each([
    [['--host', 'moon'], '--host', 'moon'],
    [['--port', '70000'], '--port', '70000'],
    [['--port', '-1'], 'arguments', '--port'],
    [['--port', '80.5'], '--port', '80.5'],
    [['--colour'], 'arguments', '--colour'],
    [['web'], 'arguments', 'web'],
  ])('%j are refused, naming %s and what was given', (args, field, value) => {
    let refusal: unknown
    try {
      readOptions(args, {})
    } catch (error) {
      refusal = error
    }
    expect(refusal).toMatchObject({ field, message: expect.stringContaining(value) })
  })
})

// XDG Base Directory Specification 0.8; the others are each system's own convention (common practice, no source).
describe('the usual data folder', () => {
  it.each([
    ['linux', {}, '/u/.local/share/lustrum'],
    ['linux', { XDG_DATA_HOME: '/x' }, '/x/lustrum'],
    ['linux', { XDG_DATA_HOME: '' }, '/u/.local/share/lustrum'],
    ['darwin', {}, '/u/Library/Application Support/Lustrum'],
    ['win32', { APPDATA: '/a' }, '/a/Lustrum'],
    ['win32', {}, '/u/AppData/Roaming/Lustrum'],
  ] as const)('on %s with %j is %s', (platform, env, dir) =>
    expect(usualDataDir(platform, env, '/u')).toBe(dir),
  )
})

describe('the clock', () => {
  it('is the real time in whole minutes', () => {
    const now = startClock({})()
    expect(Math.abs(now - Math.floor(Temporal.Now.instant().epochMilliseconds / 60_000))).toBeLessThanOrEqual(
      1,
    )
  })

  it('can be set, and runs on from there', () =>
    expect(startClock({ LUSTRUM_NOW: '2026-04-15T07:40:30Z' })()).toBe(Date.UTC(2026, 3, 15, 7, 40) / 60_000))

  it('refuses what is no instant, naming it', () =>
    expect(() => startClock({ LUSTRUM_NOW: 'noon' })).toThrow(/LUSTRUM_NOW="noon" is no instant/))
})
