import type { JsonObject, JsonValue } from '../../store/json.ts'

/** What differs, as `{ field: [before, after] }`, for the audit line of an edit; only fields of `after` are looked at. */
export function changesBetween(before: object, after: object): JsonObject {
  const was = before as Record<string, JsonValue | null>
  const changed = Object.entries(after as Record<string, JsonValue | null>).filter(
    ([field, value]) => inOneOrder(was[field] ?? null) !== inOneOrder(value ?? null),
  )
  return Object.fromEntries(changed.map(([field, value]) => [field, [was[field] ?? null, value ?? null]]))
}

/** As JSON with the keys in order: a form may send them in another one than the database has them. */
function inOneOrder(value: JsonValue | null): string {
  return JSON.stringify(value, (_, part) =>
    part !== null && typeof part === 'object' && !Array.isArray(part)
      ? Object.fromEntries(Object.entries(part).sort(([a], [b]) => (a < b ? -1 : 1)))
      : part,
  )
}
