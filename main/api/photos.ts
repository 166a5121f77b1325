/**
 * The door for photos: the file itself as the body of a post, because a photo as text in a call would be a third larger
 * and be read letter by letter while the desk waits. Answers `{"id"}`, or the refusal in words.
 */

import { Hono } from 'hono'
import { bodyLimit } from 'hono/body-limit'
import { say } from '../domain/language/index.ts'
import { Refusal } from '../domain/refusal.ts'
import type { Desk } from '../services/desk/desk.ts'
import { photoToAdd } from '../services/intake/inputs.ts'
import { addPhoto } from '../services/intake/photos.ts'

/** `/photos/<job>?name=<file name>`, behind the guard like every call. */
export const photosPath = '/photos/'

const mostBytes = 41 * 1024 * 1024

export function photoDoor(desk: Desk): Hono {
  return new Hono().post(
    `${photosPath}:jobId`,
    bodyLimit({
      maxSize: mostBytes,
      onError: context =>
        context.text(say('The photo is larger than 40 MB; take it at a lower resolution.'), 413),
    }),
    async context => {
      const asked = photoToAdd.safeParse({
        jobId: context.req.param('jobId'),
        name: context.req.query('name') ?? '',
      })
      if (!asked.success) return context.text(say('This photo cannot be used; choose it again.'), 400)
      const bytes = new Uint8Array(await context.req.arrayBuffer())
      try {
        return context.json(await addPhoto(desk, { ...asked.data, bytes }))
      } catch (error) {
        const cause = desk.store.explain(error)
        if (!(cause instanceof Refusal)) throw error
        return context.text(cause.message, cause.code === 'missing' ? 404 : 400)
      }
    },
  )
}
