import type { PageApi } from '../pageApi.ts'

/** Enters the mail server of a test as the shop's own. */
export const mailAt = (api: PageApi, port: number) =>
  api.mail.save.mutate({
    host: '127.0.0.1',
    port,
    security: 'none',
    user: null,
    fromName: 'Quillhaven Coatings',
    fromAddress: 'desk@quillhaven.example.com',
  })
