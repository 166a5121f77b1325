/** How far ahead a promise looks, in minutes after the later of today and the asked day, at the least. */
export const horizonMin = 120 * 1440

/** An asked day takes that as much further as it lies ahead, in steps: other days of these weeks are asked of one floor. */
export const reachStepMin = 28 * 1440

/** How far ahead a day may be asked for, in minutes: nobody knows their crew and hours later than that. */
export const farthestAskedMin = 2 * 366 * 1440
