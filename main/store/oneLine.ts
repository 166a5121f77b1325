/** What SQLite and the migration engine say runs over several lines; a message to a person is one. */
export function oneLine(text: string): string {
  return text.replace(/\s+/g, ' ').trim()
}
