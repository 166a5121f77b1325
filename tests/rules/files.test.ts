import { existsSync } from 'node:fs'
import { join } from 'node:path'
import { describe, expect, it } from 'vitest'
import { read, root, trackedFiles } from './trackedFiles.ts'

const limit = 300

describe('the files of the project', () => {
  const files = trackedFiles()
  const source = files.filter(path => /\.(ts|tsx|mjs|css|prisma)$/.test(path))

  it(`hold one idea each: none is longer than ${limit} lines`, () => {
    expect(source.length).toBeGreaterThan(50)
    const long = source.map(path => [path, read(path).split('\n').length - 1] as const)
    expect(long.filter(([, lines]) => lines > limit)).toEqual([])
  })

  it('cite no path of the machine they were written on', () => {
    const home = ['work', 'root', 'home', 'Users'].map(folder => `/${folder}/`)
    const cited = files
      .filter(path => !/\.(png|woff2|ico|icns|pdf)$/.test(path))
      .filter(path => {
        const text = read(path)
        return home.some(folder => new RegExp(`(^|[\\s"'\`(=:])${folder}[\\w.]`, 'm').test(text))
      })
    expect(cited).toEqual([])
  })

  it('cite only files that are there', () => {
    // A path from the project's root; one that begins with a dot is an import, and the rules' own tests plant files.
    const path =
      /(?<![\w./-])(?:app|assets|main|prisma|tests|\.ci)\/[\w./-]*(?:\.(?:css|json|md|mjs|png|prisma|sql|svg|tsx?)\b|\w\/(?=`))/g
    const cited = files
      .filter(file => /\.(css|md|mjs|prisma|sql|tsx?)$/.test(file) && !file.startsWith('tests/rules/'))
      .flatMap(file => [...read(file).matchAll(path)].map(([found]) => [file, found] as const))
    expect(cited.length).toBeGreaterThan(20)
    expect(cited.filter(([, found]) => !existsSync(join(root, found)))).toEqual([])
  })

  it('leave nothing for later', () => {
    const marks = new RegExp(
      `\\b(${['TO', 'FIX', 'XX'].map((part, i) => part + ['DO', 'ME', 'X'][i]).join('|')})\\b`,
    )
    expect(source.filter(path => marks.test(read(path)))).toEqual([])
  })

  it('switch off no type check and no test', () => {
    const off = /@ts-(ignore|nocheck)|\b(it|test|describe)\.(only|skip|todo)\(/
    // This file names them; the window's own spec says why it is skipped where there is no runtime for it.
    const may = ['tests/rules/files.test.ts', 'tests/e2e/desktop.spec.ts']
    expect(source.filter(path => !may.includes(path) && off.test(read(path)))).toEqual([])
  })
})
