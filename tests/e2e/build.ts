import { buildStale } from '../../main/hosts/build.ts'

/** Before the first test: what the servers would otherwise each build at their start. */
export default async function build(): Promise<void> {
  await buildStale()
}
