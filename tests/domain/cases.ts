/**
 * How many drawn cases a property that takes seconds is held against: `all`, but a quarter where the domain is run again in
 * another zone or at another instant. Pure arithmetic on whole numbers, it is tried there for a zone and a clock it should
 * not know of, not for its rarest case.
 */
export const cases = (all: number): number => Math.ceil(all / (process.env.LUSTRUM_AGAIN ? 4 : 1))
