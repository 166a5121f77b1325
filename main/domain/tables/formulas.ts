/**
 * Cells that a spreadsheet would run instead of show: text that begins with `=`, `+`, `-`, `@` (their full-width twins
 * too), a tab or a line end, as OWASP's "CSV injection" lists them; spaces and apostrophes before it are looked through.
 * An apostrophe in front makes it text, and one is taken off again by whoever reads the file back, so nothing is lost.
 */
const runs = /^['\s]*[=+\-@\t\r\n＝＋－＠]/

/** A cell as it was before it was defused: one apostrophe taken off, where one was put on. */
export function asWritten(cell: string): string {
  return cell.startsWith("'") && defused(cell.slice(1)) === cell ? cell.slice(1) : cell
}

/** The text with an apostrophe in front where a spreadsheet would run it. */
export function defused(text: string): string {
  return runs.test(text) ? `'${text}` : text
}
