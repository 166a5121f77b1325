import { Prisma } from './generated/client.ts'

/** JSON as the database takes it. */
export type JsonValue = Prisma.InputJsonValue
export type JsonObject = Prisma.InputJsonObject

/** Empties a JSON column: a plain null would be ambiguous between no value and the JSON value null. */
export const noJson = Prisma.DbNull
