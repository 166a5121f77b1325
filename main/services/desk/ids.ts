/** Ids for many rows that come at once. */

/**
 * Makes ids that follow one another: RFC 9562's version 8, whose first 48 bits are drawn once, the next 24 count, and the
 * last 48 are drawn for each. Rows of one list then lie side by side in every index; ids drawn at random would touch
 * a page of each index for every row, and whoever saves meanwhile would wait for that.
 */
export function idsInOrder(): () => string {
  const begin = crypto.randomUUID().slice(0, 13)
  let count = 0
  return () => {
    const counted = (count++ % 0x1000000).toString(16).padStart(6, '0')
    return `${begin}-8${counted.slice(0, 3)}-8${counted.slice(3)}-${crypto.randomUUID().slice(24)}`
  }
}
