import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { type Burst, burstMs, hearKey } from '../../../../app/parts/scans/wedge.ts'

/** Plays keys with the pauses before each, and gives the codes heard. */
function play(keys: { key: string; afterMs: number }[]): string[] {
  let burst: Burst | null = null
  let atMs = 1_000
  const codes: string[] = []
  for (const { key, afterMs } of keys) {
    atMs += afterMs
    const heard = hearKey(burst, key, atMs)
    burst = heard?.burst ?? null
    if (heard?.code) codes.push(heard.code)
  }
  return codes
}

const typed = (text: string, afterMs: number) => [...text, 'Enter'].map(key => ({ key, afterMs }))
const digits = fc.stringMatching(/^[0-9]{8,14}$/)

describe('a scanner playing keyboard', () => {
  it('is heard by a fast burst ended by Enter, whatever its digits', () => {
    fc.assert(
      fc.property(digits, fc.integer({ min: 0, max: burstMs }), (code, pause) => {
        expect(play(typed(code, pause))).toEqual([code])
      }),
    )
  })

  it('is not heard in a burst that Tab ends: so do programs that fill in fields', () => {
    expect(play([...'Kay Underhill', 'Tab'].map(key => ({ key, afterMs: 5 })))).toEqual([])
  })

  it('is not heard in what a hand types', () => {
    fc.assert(
      fc.property(digits, fc.integer({ min: burstMs + 1, max: 900 }), (code, pause) => {
        expect(play(typed(code, pause))).toEqual([])
      }),
    )
  })

  it('is heard after what was typed before it, without it', () => {
    expect(
      play([{ key: '7', afterMs: 300 }, { key: '5', afterMs: 400 }, ...pausedScan('2006381333933')]),
    ).toEqual(['2006381333933'])
  })

  it('is not heard without its Enter, nor in a few quick keys', () => {
    expect(play(typed('4006381', 5))).toEqual([])
    expect(play([...'2006381333933'].map(key => ({ key, afterMs: 5 })))).toEqual([])
  })

  it('is broken off by a key no scanner sends', () => {
    const [first, ...rest] = typed('2006381333933', 5)
    expect(play([first!, { key: 'Backspace', afterMs: 5 }, ...rest.slice(6)])).toEqual([])
  })

  it('keeps capitals that the scanner types with Shift', () => {
    const keys = ['Shift', 'L', 'O', 'T', '-', '0', '0', '4', '1', '2', 'Enter']
    expect(play(keys.map(key => ({ key, afterMs: 4 })))).toEqual(['LOT-00412'])
  })

  /** A scan that begins a while after the last key. */
  function pausedScan(code: string) {
    const [first, ...rest] = typed(code, 3)
    return [{ ...first!, afterMs: 250 }, ...rest]
  }
})
