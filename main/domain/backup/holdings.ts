/** What a shop's database holds, in the figures by which its people know it. */
export interface Holdings {
  /** Null where no shop has been set up in it. */
  readonly shop: { readonly name: string; readonly zone: string } | null
  readonly customers: number
  readonly vehicles: number
  readonly jobs: number
  /** The job booked last, and the epoch minute it is dropped off at. */
  readonly lastJob: { readonly number: number; readonly dropOffAt: number } | null
  /** Epoch minute of the last change anybody made. */
  readonly lastSavedAt: number | null
}

const counted = (count: number, one: string, many: string) =>
  `${count.toLocaleString('en')} ${count === 1 ? one : many}`

/** The figures in a line: "812 jobs, 1,240 cars, 655 customers". */
export function holdingsWords({ jobs, vehicles, customers }: Holdings): string {
  return [
    counted(jobs, 'job', 'jobs'),
    counted(vehicles, 'car', 'cars'),
    counted(customers, 'customer', 'customers'),
  ].join(', ')
}
