import type { HotkeyItem } from '@mantine/hooks'
import { say } from '../../main/domain/language/index.ts'
import type { KeyWords } from './keyWords.ts'

/** The keys that turn the days of a picture: letters, since brackets want a second key on most keyboards of Europe. */
export const turnKeys: KeyWords[] = [
  { keys: say('E and L'), label: say('earlier, later') },
  { keys: 'T', label: say('today') },
]

/** Runs those keys. */
export function turnHotkeys(onTurn: (by: -1 | 0 | 1) => void): HotkeyItem[] {
  return [
    ['e', () => onTurn(-1)],
    ['l', () => onTurn(1)],
    ['t', () => onTurn(0)],
  ]
}

/** A digit by itself or by where it lies: on a French keyboard the row of digits writes them only with Shift. */
export function digitHotkeys(digits: readonly string[], onDigit: (digit: string) => void): HotkeyItem[] {
  return digits.flatMap((digit): HotkeyItem[] => [
    [digit, () => onDigit(digit)],
    [`Digit${digit}`, () => onDigit(digit), { usePhysicalKeys: true }],
  ])
}
