import type { Page } from '@playwright/test'

/** Something on a screen that does not stand as it should. */
export interface Fault {
  kind: 'sideways' | 'clipped' | 'overlap' | 'cut off' | 'spilt' | 'undressed' | 'uneven'
  /** The words or the label it is known by. */
  what: string
}

/** The sizes of windows a shop looks through: a tablet both ways, a desk, a large screen and a wall. */
export const sizes = [
  { width: 820, height: 1180 },
  { width: 1180, height: 820 },
  { width: 1366, height: 768 },
  { width: 1920, height: 1080 },
  { width: 3840, height: 2160 },
] as const

/** A desk of 1366 × 768 zoomed to 200 %: WCAG 2.2, 1.4.4 asks that nothing is lost there. */
export const zoomed = { width: 683, height: 384 } as const

/**
 * What is wrong with the page as it stands: a page that scrolls sideways, words cut off by what holds them or written
 * over other words, fields of one row at two heights, controls that reach out of the window, and words that leave the box drawn round them. What scrolls
 * in a box of its own is in order, and so is what is shortened with its whole words in a title.
 */
export async function layoutFaults(page: Page): Promise<Fault[]> {
  let found = await faultsNow(page)
  // A drawing follows its room a moment later.
  for (let look = 0; found.length > 0 && look < 6; look++) {
    await page.waitForTimeout(250)
    found = await faultsNow(page)
  }
  return found
}

async function faultsNow(page: Page): Promise<Fault[]> {
  return await page.evaluate(() => {
    const faults: Fault[] = []
    const width = document.documentElement.clientWidth
    const over = document.documentElement.scrollWidth - width
    if (over > 0) faults.push({ kind: 'sideways', what: `${over} px` })

    const styles = new Map<Element, CSSStyleDeclaration>()
    const styleOf = (element: Element) => {
      const kept = styles.get(element) ?? getComputedStyle(element)
      styles.set(element, kept)
      return kept
    }
    const shown = (element: Element) =>
      element.checkVisibility({ opacityProperty: true, visibilityProperty: true })
    const hides = (value: string) => value === 'hidden' || value === 'clip'
    /** A box one pixel small is there for those who hear the page. */
    const heard = (box: DOMRect) => box.width <= 1.5 || box.height <= 1.5
    const name = (element: Element) =>
      (element.getAttribute('aria-label') ?? element.textContent ?? '')
        .trim()
        .replace(/\s+/g, ' ')
        .slice(0, 60) || element.tagName.toLowerCase()
    /** What a drawing shows of an element that is cut to a rectangle. */
    const clipOf = (element: SVGGraphicsElement) => {
      const id = /#([^"')]+)/.exec(element.getAttribute('clip-path') ?? '')?.[1]
      const cut = id ? document.getElementById(id)?.firstElementChild : null
      const matrix = element.getScreenCTM()
      if (!(cut instanceof SVGRectElement) || !matrix) return null
      const left = new DOMPoint(cut.x.baseVal.value, 0).matrixTransform(matrix).x
      return { left, right: left + cut.width.baseVal.value * matrix.a }
    }
    const hasEdge = (style: CSSStyleDeclaration) =>
      Number.parseFloat(style.borderRightWidth) > 0 && style.borderRightStyle !== 'none'

    const texts: { box: DOMRect; words: string; parent: Element }[] = []
    const walker = document.createTreeWalker(document.body, NodeFilter.SHOW_TEXT)
    for (let node = walker.nextNode(); node; node = walker.nextNode()) {
      const words = node.textContent?.trim() ?? ''
      const parent = node.parentElement
      if (
        !words ||
        !parent ||
        !shown(parent) ||
        parent.closest('[aria-hidden="true"] svg, option, title, desc, script, style')
      )
        continue
      const range = document.createRange()
      range.selectNodeContents(node)
      const box = range.getBoundingClientRect()
      if (box.width === 0 || box.height === 0) continue
      let seen = true
      let scrolls = false
      let shownLeft = -Infinity
      let shownRight = Infinity
      for (let at: Element | null = parent; at && at !== document.body; at = at.parentElement) {
        const style = styleOf(at)
        const frame = at.getBoundingClientRect()
        if (heard(frame) && hides(style.overflowX)) {
          seen = false
          break
        }
        if (style.overflowX === 'auto' || style.overflowX === 'scroll') scrolls = true
        if (scrolls) continue
        const clip = at instanceof SVGGraphicsElement ? clipOf(at) : hides(style.overflowX) ? frame : null
        if (clip) [shownLeft, shownRight] = [Math.max(shownLeft, clip.left), Math.min(shownRight, clip.right)]
        const out = box.right - frame.right > 1.5 || frame.left - box.left > 1.5
        if (out && hides(style.overflowX) && !(at instanceof SVGElement) && !at.closest('[title]')) {
          faults.push({ kind: 'clipped', what: words.slice(0, 60) })
          seen = false
          break
        }
        if (out && hides(style.overflowX)) break
        if (out && hasEdge(style) && !(at instanceof SVGElement)) {
          faults.push({ kind: 'spilt', what: words.slice(0, 60) })
          break
        }
        if (style.position === 'fixed' || style.position === 'absolute') break
      }
      if (seen && !scrolls)
        for (const { left, right, top, bottom } of range.getClientRects()) {
          const [from, to] = [Math.max(left, shownLeft), Math.min(right, shownRight)]
          if (to > from) texts.push({ box: new DOMRect(from, top, to - from, bottom - top), words, parent })
        }
    }

    /** What floats over the page on purpose is compared with nothing below it. */
    const layer = (element: Element) => {
      for (let at: Element | null = element; at; at = at.parentElement) {
        const { position } = styleOf(at)
        if (position === 'sticky' || position === 'fixed') return at
      }
      return null
    }
    texts.sort((one, other) => one.box.top - other.box.top)
    for (const [index, one] of texts.entries())
      for (let next = index + 1; next < texts.length; next++) {
        const other = texts[next]!
        if (other.box.top > one.box.bottom - 3) break
        const across = Math.min(one.box.right, other.box.right) - Math.max(one.box.left, other.box.left)
        const down = Math.min(one.box.bottom, other.box.bottom) - other.box.top
        if (
          across > 2 &&
          // The box of a line is higher than its letters.
          down > 0.3 * Math.min(one.box.height, other.box.height) &&
          one.parent !== other.parent &&
          layer(one.parent) === layer(other.parent)
        )
          faults.push({ kind: 'overlap', what: `${one.words.slice(0, 40)} / ${other.words.slice(0, 40)}` })
      }

    for (const control of document.querySelectorAll('button, input, select, textarea, a[href]')) {
      const box = control.getBoundingClientRect()
      if (!shown(control) || heard(box) || styleOf(control).position === 'absolute') continue
      let scrolls = false
      for (let at = control.parentElement; at; at = at.parentElement)
        scrolls ||= ['auto', 'scroll'].includes(styleOf(at).overflowX)
      if (!scrolls && (box.right > width + 1 || box.left < -1))
        faults.push({ kind: 'cut off', what: name(control) })
    }
    // What was chosen stands in a field nobody can scroll; what was typed can be gone through.
    for (const field of document.querySelectorAll<HTMLInputElement>('input[readonly], input[aria-haspopup]'))
      if (field.value && shown(field) && !field.title && field.scrollWidth > field.clientWidth + 1)
        faults.push({ kind: 'clipped', what: field.value.slice(0, 60) })

    // Fields that begin on one line stand on one line, however long their labels are.
    const places = new Map<Element, Map<number, number>>()
    for (const field of document.querySelectorAll('.mantine-InputWrapper-root')) {
      const input = field.querySelector(':scope > .mantine-Input-wrapper')
      const row = field.parentElement
      if (!input || !row || !shown(field) || styleOf(row).display !== 'grid') continue
      const at = input.getBoundingClientRect().top
      const begins = Math.round(field.getBoundingClientRect().top)
      const rows = places.get(row) ?? new Map<number, number>()
      places.set(row, rows)
      const first = rows.get(begins) ?? at
      rows.set(begins, first)
      if (Math.abs(first - at) > 1.5) faults.push({ kind: 'uneven', what: name(field) })
    }

    for (const link of document.links)
      if (shown(link) && ['rgb(0, 0, 238)', 'rgb(158, 158, 255)'].includes(styleOf(link).color))
        faults.push({ kind: 'undressed', what: name(link) })
    return [...new Map(faults.map(fault => [`${fault.kind} ${fault.what}`, fault])).values()]
  })
}
