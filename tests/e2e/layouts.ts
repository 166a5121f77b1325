import type { CDPSession, Page } from '@playwright/test'

/**
 * What three keyboards send for the same key named on a screen: the place of the key (`code`), what it writes there
 * (`key`) and whether it wants Shift. From the layouts as Windows ships them (United States, German, French), published
 * at learn.microsoft.com/globalization/windows-keyboard-layouts; the names of the places are those of the W3C's UI
 * Events KeyboardEvent code values.
 */
interface Stroke {
  key: string
  code: string
  shift: boolean
}

export const layouts = ['US', 'German', 'French'] as const
export type Layout = (typeof layouts)[number]

/** Where a letter lies that a US keyboard has elsewhere. */
const moved: Readonly<Record<Layout, Readonly<Record<string, string>>>> = {
  US: {},
  German: { y: 'KeyZ', z: 'KeyY' },
  French: { a: 'KeyQ', q: 'KeyA', z: 'KeyW', w: 'KeyZ', m: 'Semicolon' },
}

const signs: Readonly<Record<Layout, Readonly<Record<string, Omit<Stroke, 'key'>>>>> = {
  US: { '?': { code: 'Slash', shift: true }, '/': { code: 'Slash', shift: false } },
  German: { '?': { code: 'Minus', shift: true }, '/': { code: 'Digit7', shift: true } },
  French: { '?': { code: 'KeyM', shift: true }, '/': { code: 'Period', shift: true } },
}

/** What the row of digits writes in France without Shift, from 0 on. */
const unshifted = ['à', '&', 'é', '"', "'", '(', '-', 'è', '_', 'ç']

/** The ways to press a key as a screen names it: a digit of the row has two in France, with Shift and without. */
export function strokesOf(layout: Layout, named: string): Stroke[] {
  const sign = signs[layout][named]
  if (sign) return [{ key: named, ...sign }]
  if (/^\d$/.test(named)) {
    const code = `Digit${named}`
    if (layout !== 'French') return [{ key: named, code, shift: false }]
    return [
      { key: unshifted[Number(named)]!, code, shift: false },
      { key: named, code, shift: true },
    ]
  }
  return [{ key: named, code: moved[layout][named] ?? `Key${named.toUpperCase()}`, shift: false }]
}

/** A pause as a hand makes it, in milliseconds: keys that follow faster are a scanner's to the app. */
const pauseMs = 100

/** A keyboard of that layout, played into the browser. */
export class Keyboard {
  readonly #page: Page
  readonly #cdp: CDPSession
  readonly #layout: Layout

  private constructor(page: Page, cdp: CDPSession, layout: Layout) {
    this.#page = page
    this.#cdp = cdp
    this.#layout = layout
  }

  static async at(page: Page, layout: Layout): Promise<Keyboard> {
    return new Keyboard(page, await page.context().newCDPSession(page), layout)
  }

  /** Presses a key after a pause; two are a pair, of which the second does not wait until the page is done with the first. */
  async press(...named: [string] | [string, string]): Promise<void> {
    await this.#page.waitForTimeout(pauseMs)
    await Promise.all(named.map(name => this.strike(strokesOf(this.#layout, name)[0]!)))
  }

  /** One way to press it. */
  async strike({ key, code, shift }: Stroke): Promise<void> {
    const event = { key, code, modifiers: shift ? 8 : 0 }
    await Promise.all([
      this.#cdp.send('Input.dispatchKeyEvent', { type: 'keyDown', ...event, text: key }),
      this.#cdp.send('Input.dispatchKeyEvent', { type: 'keyUp', ...event }),
    ])
  }

  /** With Ctrl held, when a key writes nothing. */
  async withControl(named: string): Promise<void> {
    const { key, code } = strokesOf(this.#layout, named)[0]!
    const event = { key, code, modifiers: 2 }
    await this.#cdp.send('Input.dispatchKeyEvent', { type: 'rawKeyDown', ...event })
    await this.#cdp.send('Input.dispatchKeyEvent', { type: 'keyUp', ...event })
  }
}
