import { AsyncLocalStorage } from 'node:async_hooks'
import { readdirSync, readFileSync } from 'node:fs'
import { dirname, join } from 'node:path'
import { fileURLToPath } from 'node:url'
import {
  type Catalogue,
  type Language,
  languages,
  speakAs,
  standIn,
  teach,
} from '../../domain/language/index.ts'
import type { Desk } from './desk.ts'
import { findShop } from './shopView.ts'

// Three folders up lies assets/; from the bundle of the desktop app, two.
const here = dirname(fileURLToPath(import.meta.url))
const root = here.endsWith(join('services', 'desk')) ? join(here, '..', '..', '..') : join(here, '..', '..')

const spoken = new AsyncLocalStorage<{ language: Language; country: string | undefined }>()
speakAs(() => spoken.getStore()?.language ?? 'en')
standIn(() => spoken.getStore()?.country)

/** The words of a language, from all the files of its folder; none for English, which is written in the code. */
export function readCatalogue(language: Language): Catalogue {
  if (language === 'en') return {}
  const folder = join(root, 'assets', 'words', language)
  const files = readdirSync(folder).filter(name => name.endsWith('.json'))
  return Object.assign({}, ...files.map(name => JSON.parse(readFileSync(join(folder, name), 'utf8'))))
}

for (const language of languages) teach(language, () => readCatalogue(language))

/**
 * Does something in a language: all that is said on the way, also after waiting, is said in it. Figures are written as
 * in the country given; without one in that of the shop served, so a customer's paper in another language keeps it.
 */
export function speaking<Result>(
  language: Language,
  work: () => Result,
  country = spoken.getStore()?.country,
): Result {
  return spoken.run({ language, country }, work)
}

/** Does something in the language of the shop; in English where there is no shop yet. */
export async function speakingForShop<Result>(desk: Desk, work: () => Promise<Result>): Promise<Result> {
  const shop = await findShop(desk.store.read)
  return speaking(shop?.language ?? 'en', work, shop?.country)
}
