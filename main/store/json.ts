import { Prisma } from './generated/client.ts'

/** JSON as the database takes it. */
export type JsonValue = Prisma.InputJsonValue
export type JsonObject = Prisma.InputJsonObject

/** Empties a JSON column: a plain null would be ambiguous between no value and the JSON value null. */
export const noJson = Prisma.DbNull

/** Plain data as a JSON column takes it: an interface lacks the index signature that its type asks for. */
export function toJson(data: object): JsonObject {
  return data as JsonObject
}

/** A step, its help as its column takes it. */
export function withHelp<S extends { readonly help?: unknown }>(step: S) {
  return { ...step, help: step.help == null ? noJson : toJson(step.help) }
}

/** What a JSON column holds, as the type that is written there; null stays null. */
export function fromJson<T>(column: unknown): T {
  return column as T
}
