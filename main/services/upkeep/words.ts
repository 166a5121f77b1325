/** `14 September 2026` */
export function dayWords(day: string): string {
  return Temporal.PlainDate.from(day).toLocaleString('en-GB', { dateStyle: 'long' })
}
