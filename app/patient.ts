/**
 * Fetches a part of the window. Where the app is gone it is asked for again until the app answers: a window would else stay
 * blank for good. An app that answers and has no such part is a newer one, whose window has to be loaded anew.
 */
export async function patient<T>(load: () => Promise<T>): Promise<T> {
  for (;;)
    try {
      return await load()
    } catch (error) {
      if (await answers()) throw error
      await new Promise(resolve => setTimeout(resolve, 1_000))
    }
}

async function answers(): Promise<boolean> {
  try {
    await fetch('/', { method: 'HEAD', cache: 'no-store' })
    return true
  } catch {
    return false
  }
}
