import { readdirSync, readFileSync } from 'node:fs'
import { join } from 'node:path'
import { IntlMessageFormat } from 'intl-messageformat'
import { describe, expect, it } from 'vitest'
import { languages } from '../../main/domain/language/index.ts'
import { saidIn, spokenFiles } from './saidWords.ts'
import { read, root } from './trackedFiles.ts'

const files = spokenFiles().map(path => saidIn(path))
const said = new Map(
  files.flatMap(file => file.said.map(({ text, path, line }) => [text, `${path}:${line}`])),
)

/** The names of a message's values and of its tags, each once, in order. */
function namesIn(text: string): string[] {
  type Part = { type: number; value: string; children?: Part[]; options?: Record<string, { value: Part[] }> }
  const names = new Set<string>()
  const walk = (parts: Part[]) => {
    for (const part of parts) {
      // 0 is plain text, 7 the number sign of a plural.
      if (part.type !== 0 && part.type !== 7) names.add(part.type === 8 ? `<${part.value}>` : part.value)
      walk(part.children ?? [])
      for (const option of Object.values(part.options ?? {})) walk(option.value)
    }
  }
  const tags = /<(b|i|em|strong|small|kbd)>/.test(text)
  walk(new IntlMessageFormat(text, 'en', undefined, { ignoreTag: !tags }).getAst() as unknown as Part[])
  return [...names].sort()
}

describe('the words of the screens', () => {
  it('are found in the code', () => {
    const planted = `const a = say('one'); const b = <Say text="<b>two</b>" />; const c = say(late ? 'three' : 'four'); const d = <p>five words</p>`
    const found = saidIn('app/planted.tsx', planted)
    expect(found.said.map(({ text }) => text)).toEqual(['one', '<b>two</b>', 'three', 'four'])
    expect(found.bare.map(({ text }) => text)).toEqual(['five words'])
    expect(said.size).toBeGreaterThan(4_000)
  })

  it('all go through say, so that a catalogue can hold them', () => {
    expect(files.flatMap(file => file.bare)).toEqual([])
  })

  it.each(languages.filter(language => language !== 'en'))('are complete in %s, each text once', language => {
    const folder = join(root, 'assets', 'words', language)
    const rows = readdirSync(folder).flatMap(name =>
      Object.entries(JSON.parse(readFileSync(join(folder, name), 'utf8')) as Record<string, string>).map(
        ([text, own]) => ({ name, text, own }),
      ),
    )
    const own = new Map(rows.map(row => [row.text, row.own]))
    expect(
      rows.map(row => row.text).filter((text, i, all) => all.indexOf(text) !== i),
      'said twice',
    ).toEqual([])
    expect(
      [...said].filter(([text]) => !own.has(text)),
      'without words',
    ).toEqual([])
    // A text may be chosen elsewhere than where it is said: then it stands in the code as it is.
    const code = spokenFiles().map(read).join('\n')
    const needless = [...own.keys()].filter(text => !said.has(text) && !code.includes(text))
    expect(needless, 'said nowhere').toEqual([])
    const unlike = rows.filter(row => namesIn(row.text.split('||')[0]!).join() !== namesIn(row.own).join())
    expect(unlike, 'with other values or tags than the English text').toEqual([])
  })
})
