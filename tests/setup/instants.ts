/** When software of the calendar tends to fail, each in the zone whose clocks make it awkward. */
export const instants: readonly { name: string; at: string }[] = [
  { name: 'Friday, just before midnight', at: '2026-11-27T23:50-05:00[America/New_York]' },
  { name: 'Sunday', at: '2026-06-14T12:00+12:00[Pacific/Auckland]' },
  { name: 'a holiday', at: '2026-12-25T09:30+01:00[Europe/Berlin]' },
  { name: 'the last minutes of the year', at: '2026-12-31T23:55-05:00[America/New_York]' },
  { name: 'the first minutes of the year', at: '2027-01-01T00:05+13:00[Pacific/Auckland]' },
  { name: '29 February', at: '2028-02-29T11:00+01:00[Europe/Berlin]' },
  // Source of the four: IANA time zone database (rules US and EU); Temporal refuses an offset that does not fit.
  { name: 'New York goes to summer time', at: '2027-03-14T01:55-05:00[America/New_York]' },
  { name: 'New York goes back to winter time', at: '2026-11-01T01:55-04:00[America/New_York]' },
  { name: 'Berlin goes to summer time', at: '2027-03-28T01:55+01:00[Europe/Berlin]' },
  { name: 'Berlin goes back to winter time', at: '2026-10-25T02:55+02:00[Europe/Berlin]' },
  { name: 'the end of a month of 30 days', at: '2027-04-30T23:55+12:00[Pacific/Auckland]' },
  { name: 'the end of a short month', at: '2027-02-28T23:55+05:45[Asia/Kathmandu]' },
]
