import { say } from '../language/index.ts'
import { refuse } from '../refusal.ts'
import { checkText } from './text.ts'

const most = 20

/** Tags as they are kept: trimmed, each once, capitals aside. Refuses more than 20, and one of more than 40 characters. */
export function checkTags(tags: readonly string[], field = 'tags'): string[] {
  const kept = new Map<string, string>()
  for (const tag of tags) {
    if (tag.trim() === '') continue
    const text = checkText(tag, field, say('A tag'), 40)
    if (!kept.has(text.toLowerCase())) kept.set(text.toLowerCase(), text)
  }
  if (kept.size > most)
    refuse(
      'tags-many',
      { [field]: tags },
      say('{kept} tags are too many to tell apart; keep {most}.', { kept: kept.size, most }),
    )
  return [...kept.values()]
}
