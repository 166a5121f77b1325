export const clockHours = [12, 24] as const
export type ClockHours = (typeof clockHours)[number]

export const dateOrders = ['dayFirst', 'monthFirst'] as const
export type DateOrder = (typeof dateOrders)[number]

/** What is known of a shop's ways: its country, and what it chose otherwise than is usual there. */
export interface Ways {
  /** Two letters of ISO 3166. */
  readonly country: string
  readonly clockHours?: ClockHours | null
  readonly dateOrder?: DateOrder | null
  readonly weekBegins?: number | null
  readonly units?: 'metric' | 'us'
}

let asked: () => Ways | undefined = () => undefined

/** Who is asked for the shop's ways: a window knows its own, the server those of the request. */
export function standIn(ways: () => Ways | undefined): void {
  asked = ways
}

/** The ways of the shop at this moment; undefined where none is known. */
export function waysNow(): Ways | undefined {
  return asked()
}

/** What its screens, papers and refusals measure in. */
export function unitsNow(): 'metric' | 'us' {
  return waysNow()?.units ?? 'metric'
}
