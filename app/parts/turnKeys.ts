import { say } from '../../main/domain/language/index.ts'
import type { KeyWords } from './keyWords.ts'
import type { ScreenKeys } from './useScreenKeys.ts'

/** The keys that turn the days of a picture: letters, since brackets want a second key on most keyboards of Europe. */
export const turnWords: KeyWords[] = [
  { keys: say('E and L'), label: say('earlier, later') },
  { keys: 'T', label: say('today') },
]

/** What those keys do. */
export const turnKeys = (onTurn: (by: -1 | 0 | 1) => void): ScreenKeys => ({
  e: () => onTurn(-1),
  l: () => onTurn(1),
  t: () => onTurn(0),
})
