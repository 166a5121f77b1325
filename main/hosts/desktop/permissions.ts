import type { Session } from 'electron'
import { isOurs } from './scheme.ts'

type Ask = NonNullable<Parameters<Session['setPermissionRequestHandler']>[0]>
type Check = NonNullable<Parameters<Session['setPermissionCheckHandler']>[0]>
export type Permission = Parameters<Ask>[1] | Parameters<Check>[1]

/** What the app's own page may do beyond showing itself, and why; everything that is not here is refused. */
export const granted: Partial<Record<Permission, string>> = {
  notifications: 'A topper window opens or a hold ends while the desk looks at another program.',
  'clipboard-sanitized-write': 'A button copies a text, such as a message to the owner.',
  fullscreen: 'The morning sheet and the board are shown on a wall.',
}

/** Refuses every permission but those granted to the app's own page, and every device. */
export function guardPermissions(session: Session): void {
  const may = (permission: Permission, from: string) => Object.hasOwn(granted, permission) && isOurs(from)
  session.setPermissionRequestHandler((_contents, permission, answer, details) =>
    answer(may(permission, details.requestingUrl)),
  )
  session.setPermissionCheckHandler((_contents, permission, origin) => may(permission, origin))
  session.setDevicePermissionHandler(() => false)
}
