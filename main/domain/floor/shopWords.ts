import { durationWords, minuteWords } from '../calendar/index.ts'
import { say, word } from '../language/index.ts'
import type { Words } from '../schedule/index.ts'
import { needsOf } from '../shop/index.ts'
import { listWords } from '../words.ts'

const capabilityWords: Record<string, string> = {
  wet: word('washing'),
  polish: word('polishing'),
  clean: word('clean work'),
  cure: word('curing'),
}

const skillWords: Record<string, string> = {
  wash: word('washing'),
  polish: word('polishing'),
  coat: word('coating'),
  outside: word('outside work'),
}

/** A shop's own words stand as they were typed. */
const sayOr = (words: string | undefined, own: string) => (words === undefined ? own : say(words))

export interface Named {
  readonly zone: string
  readonly nowAt: number
  readonly bayNames: ReadonlyMap<string, string>
  readonly crewNames: ReadonlyMap<string, string>
  /** Whose a booked stay is: `KFR 204 (job 12)`. */
  readonly jobNames: ReadonlyMap<string, string>
}

/** The shop's own words for the scheduler's reasons, about a job with these steps. */
export function wordsFor(shop: Named, stepNames: readonly string[]): Words {
  return {
    minute: at => minuteWords(at, shop.zone, shop.nowAt),
    duration: durationWords,
    bay: id => shop.bayNames.get(id) ?? say('a bay that is no longer there'),
    person: id => shop.crewNames.get(id) ?? say('somebody no longer of the crew'),
    skill: skill => sayOr(skillWords[skill], skill),
    capability: key => listWords(needsOf(key).map(need => sayOr(capabilityWords[need], need))),
    step: index => stepNames[index] ?? say('step {index}', { index: index + 1 }),
    job: id => shop.jobNames.get(id) ?? say('another job'),
  }
}
