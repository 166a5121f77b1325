/**
 * Calendar feeds. `GET /feed/<token>.ics` answers an iCalendar file to whoever holds the link, past the guard's cookie:
 * calendar programs have none. The token is shown once, when the feed is opened.
 */

import { Hono } from 'hono'
import { z } from 'zod'
import { say } from '../domain/language/index.ts'
import type { Desk } from '../services/desk/desk.ts'
import { id } from '../services/desk/inputs.ts'
import { createFeed, feedFile, listFeeds, revokeFeed } from '../services/reminders/feeds.ts'
import { feedInput } from '../services/reminders/inputs.ts'
import { procedure, router } from './trpc.ts'

/** What is let past the cookie; whether the token is any good is asked behind it. */
export const feedPath = /^\/feed\/([\w-]{40,60})\.ics$/

export const feeds = router({
  list: procedure.query(({ ctx }) => listFeeds(ctx)),
  /** Answers the link's path, this once. */
  create: procedure.input(feedInput).mutation(({ ctx, input }) => createFeed(ctx, input)),
  revoke: procedure.input(z.object({ id })).mutation(({ ctx, input }) => revokeFeed(ctx, input)),
})

/** The feeds' address. */
export function feedDoor(desk: Desk): Hono {
  return new Hono().get('/feed/:file', async context => {
    const token = feedPath.exec(context.req.path)?.[1]
    const file = token === undefined ? null : await feedFile(desk, token)
    if (file === null)
      return context.text(say('No feed has this address; open one in the upkeep screen.'), 404)
    return context.body(file, 200, {
      'content-type': 'text/calendar; charset=utf-8',
      'content-disposition': 'inline; filename="lustrum.ics"',
      'cache-control': 'no-store',
    })
  })
}
