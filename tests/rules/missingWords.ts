/*
 * `npm run words -- de [FOLDER]`: the texts under a folder that a language has no words for yet, as a catalogue file to
 * fill in, beside the place each is said at.
 */
import { languages } from '../../main/domain/language/index.ts'
import { readCatalogue } from '../../main/services/desk/speaking.ts'
import { saidIn, spokenFiles } from './saidWords.ts'

const [tag = 'de', folder = ''] = process.argv.slice(2)
const language = languages.find(each => each === tag)
if (!language) throw new Error(`Name one of ${languages.join(', ')}.`)
const known = readCatalogue(language)
const missing = new Map<string, string>()
for (const path of spokenFiles())
  if (path.startsWith(folder))
    for (const { text, line } of saidIn(path).said)
      if (!(text in known) && !missing.has(text)) missing.set(text, `${path}:${line}`)
console.log(JSON.stringify(Object.fromEntries(missing), null, 2))
