/**
 * What the screens of the shelf are given: plain JSON. Amounts are in the product's own unit (ml, g, pieces) with at
 * most two decimals, points in time epoch minutes (`...At`), days `YYYY-MM-DD` of the shop's zone, money minor units.
 */
export type * from './shelf/views/advice.ts'
export type * from './shelf/views/closeOfDay.ts'
export type * from './shelf/views/lots.ts'
export type * from './shelf/views/orders.ts'
export type * from './shelf/views/product.ts'
export type * from './shelf/views/safety.ts'
export type * from './shelf/views/value.ts'
