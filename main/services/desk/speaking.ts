import { AsyncLocalStorage } from 'node:async_hooks'
import { readdirSync, readFileSync } from 'node:fs'
import { join } from 'node:path'
import { assetsFolder } from '../../documents/kit/assets.ts'
import {
  type Catalogue,
  type Language,
  languageNow,
  languages,
  speakAs,
  standIn,
  teach,
  type Ways,
} from '../../domain/language/index.ts'
import type { Tx } from '../../store/store.ts'
import type { Desk } from './desk.ts'
import { findShop } from './shopView.ts'

const spoken = new AsyncLocalStorage<{ language: Language; ways: Ways | undefined }>()
speakAs(() => spoken.getStore()?.language ?? 'en')
standIn(() => spoken.getStore()?.ways)

/** The words of a language, from all the files of its folder; none for English, which is written in the code. */
export function readCatalogue(language: Language): Catalogue {
  if (language === 'en') return {}
  const folder = join(assetsFolder, 'words', language)
  const files = readdirSync(folder).filter(name => name.endsWith('.json'))
  return Object.assign({}, ...files.map(name => JSON.parse(readFileSync(join(folder, name), 'utf8'))))
}

for (const language of languages) teach(language, () => readCatalogue(language))

/**
 * Does something in a language: all that is said on the way, also after waiting, is said in it. Figures and times are
 * written in the ways given; without them in those of the shop served, so a customer's paper in another language keeps it.
 */
export function speaking<Result>(
  language: Language,
  work: () => Result,
  ways = spoken.getStore()?.ways,
): Result {
  return spoken.run({ language, ways }, work)
}

/** Does something in the language of the shop; where there is no shop yet, in that of whoever sets it up. */
export async function speakingForShop<Result>(
  desk: Desk,
  work: () => Promise<Result>,
  wished: Language = 'en',
): Promise<Result> {
  const shop = await findShop(desk.store.read)
  return speaking(shop?.language ?? wished, work, shop ?? undefined)
}

/**
 * The language a customer is written to in: theirs where one is set and the app speaks it, else that of the moment,
 * which is the shop's.
 */
export async function languageTo(tx: Tx, customerId: string): Promise<Language> {
  const reach = await tx.ownerReach.findUnique({ where: { customerId }, select: { language: true } })
  return spokenFor(reach?.language ?? '')
}

/** Makes what a customer is given, in the language they are written to in. */
export async function speakingTo<Result>(
  tx: Tx,
  customerId: string,
  work: () => Promise<Result>,
): Promise<Result> {
  return speaking(await languageTo(tx, customerId), work)
}

/** Makes what the owner of a job's car is given; in the language of the moment where there is no such job. */
export async function speakingToOwner<Result>(
  tx: Tx,
  jobId: string,
  work: () => Promise<Result>,
): Promise<Result> {
  const job = await tx.job.findUnique({ where: { id: jobId }, select: { customerId: true } })
  return job ? speakingTo(tx, job.customerId, work) : work()
}

/** The language the app speaks for this tag, or for the first of a browser's: `de` for `de-AT,en`; that of the moment where it speaks none such. */
export function spokenFor(tag: string): Language {
  const base = tag.toLowerCase().split(/[-,;]/)[0]
  return languages.find(language => language === base) ?? languageNow()
}

/** The language of this computer, where the app speaks it: for what is said before a shop is open. */
export function systemLanguage(): Language {
  return spokenFor(Intl.DateTimeFormat().resolvedOptions().locale)
}
