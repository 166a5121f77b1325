/** What is read of a key that is pressed. */
type Pressed = Pick<KeyboardEvent, 'key' | 'code' | 'shiftKey' | 'ctrlKey' | 'metaKey' | 'altKey'>

/**
 * The key of a screen that was pressed: a letter (small), digit or sign as it is written there, wherever it lies and
 * whether it wants Shift; other keys by their names. Null with Ctrl, Alt or the like, which ask for something else.
 */
export function keySaid({ key, code, shiftKey, ctrlKey, metaKey, altKey }: Pressed): string | null {
  if (ctrlKey || metaKey || altKey) return null
  if (key.length > 1) return key
  // In France the row of digits writes them only with Shift; without it the same keys are as good.
  const digit = shiftKey ? undefined : /^Digit(\d)$/.exec(code)?.[1]
  return digit ?? key.toLowerCase()
}
