/** The rows as the database keeps them, for the services that work with them; types only. */
export type * from './generated/client.ts'
