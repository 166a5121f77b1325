const place = 'lustrum.desk'

/** What this browser calls itself, after a reload too: whoever takes back takes back what was done here. */
export function deskHeaders(): Record<string, string> {
  try {
    const known = localStorage.getItem(place)
    const id = known ?? crypto.randomUUID()
    if (known === null) localStorage.setItem(place, id)
    return { 'x-lustrum-desk': id }
  } catch {
    // Without storage it is one of those that do not say.
    return {}
  }
}
