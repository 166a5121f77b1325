import { say } from '../../../../main/domain/language/index.ts'
import type { KeyWords } from '../../../parts/keyWords.ts'
import { turnWords } from '../../../parts/turnKeys.ts'
import { boardActions } from './actions.ts'

const signs: Readonly<Record<string, string>> = {
  ArrowLeft: '←',
  ArrowRight: '→',
  ArrowUp: '↑',
  ArrowDown: '↓',
  Escape: 'Esc',
  ' ': say('Space'),
  Enter: 'Enter',
}

/** The board's keys as the keyboard help lists them; those of the actions in their own words. */
export const boardKeys: KeyWords[] = [
  { keys: '1, 3, 7', label: say('so many days') },
  ...turnWords,
  ...boardActions.map(({ keys, label }) => ({
    keys: keys.map(key => signs[key] ?? key.toUpperCase()).join(` ${say('or')} `),
    label,
  })),
]
