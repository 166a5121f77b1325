import { describe, expect, test } from 'vitest'
import { type CommandContext, commands, findCommands } from '../../../app/parts/commands.ts'
import { keyMeaning, pairMs } from '../../../app/parts/jumpKeys.ts'
import { screens } from '../../../app/parts/screens.ts'

const commandOf = (meaning: ReturnType<typeof keyMeaning>) =>
  meaning && 'command' in meaning ? meaning.command.name : meaning

describe('keys', () => {
  test('G waits for a second key, which goes to its screen', () => {
    expect(keyMeaning('g', null, 0)).toEqual({ first: true })
    for (const { key } of screens)
      expect(commandOf(keyMeaning(key, { key: 'g', at: 100 }, 100 + pairMs))).toBe(`screen-${key}`)
  })

  test('a second key that comes late, or belongs to no pair, means nothing here', () => {
    expect(keyMeaning('c', { key: 'g', at: 0 }, pairMs + 1)).toBeNull()
    expect(keyMeaning('q', { key: 'g', at: 0 }, 10)).toBeNull()
    expect(keyMeaning('c', null, 0)).toBeNull()
  })

  test('? shows the keys at once, and G begins again after a first G', () => {
    expect(commandOf(keyMeaning('?', null, 0))).toBe('keys')
    expect(keyMeaning('g', { key: 'g', at: 0 }, 10)).toEqual({ first: true })
  })

  test('no two commands share keys or a name, and no pair begins with a key of its own', () => {
    const taken = commands.filter(({ keys }) => keys.length > 0).map(({ keys }) => keys.join(' '))
    expect(new Set(taken).size).toBe(taken.length)
    expect(new Set(commands.map(({ name }) => name)).size).toBe(commands.length)
    const firsts = commands.filter(({ keys }) => keys.length === 2).map(({ keys }) => keys[0])
    expect(commands.filter(({ keys }) => keys.length === 1 && firsts.includes(keys[0]))).toEqual([])
  })
})

describe('commands', () => {
  test('are found by every word of the text, in any order', () => {
    const names = (text: string) => findCommands(text).map(({ name }) => name)
    expect(names('cure profiles')).toEqual(['settings-products'])
    expect(names('holiday')).toEqual(['settings-hours', 'settings-crew'])
    expect(names('customer new')).toEqual(['new-customer'])
    expect(names('xyzzy')).toEqual([])
    expect(names('')).toHaveLength(commands.length)
  })

  test('do one thing each', () => {
    const done: string[] = []
    const context: CommandContext = {
      go: to => done.push(to),
      setScheme: scheme => done.push(scheme),
      showKeys: () => done.push('keys'),
    }
    for (const command of commands) command.run(context)
    expect(done).toHaveLength(commands.length)
    expect(new Set(done).size).toBe(commands.length)
    expect(done).toEqual(expect.arrayContaining([...screens.map(({ to }) => to), 'dark', 'keys']))
  })
})
