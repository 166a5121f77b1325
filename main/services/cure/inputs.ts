/** What sensors send. */
import { z } from 'zod'
import { number } from '../desk/inputs.ts'

const value = z.union([number('Give a number.'), z.string().max(40)])
/** A sensor's post: at most some hours of a reading a minute. */
export const postedReadings = z.object({
  unit: z.enum(['C', 'F']).default('C'),
  readings: z
    .array(
      z.object({
        time: z.union([z.string().max(40), number('Give a number.', 1e13)]).transform(String),
        air: value,
        panel: value.nullable().default(null),
        humidity: value.nullable().default(null),
        dewPoint: value.nullable().default(null),
      }),
    )
    .min(1)
    .max(500),
})
export type PostedReadings = z.infer<typeof postedReadings>
