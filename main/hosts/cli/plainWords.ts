import type { Words } from '../../domain/schedule/index.ts'

/** Words for cases that know neither zone nor names: minutes as day and hour from minute 0, ids as they are. */
export const plainWords: Words = {
  minute: at => {
    const hour = String(Math.floor((at % 1440) / 60)).padStart(2, '0')
    const minute = String(at % 60).padStart(2, '0')
    return `minute ${at} (day ${Math.floor(at / 1440)}, ${hour}:${minute})`
  },
  duration: minutes => `${minutes} min`,
  bay: id => `bay ${id}`,
  person: id => id,
  skill: skill => skill,
  capability: capability => capability,
  step: index => `step ${index + 1}`,
  job: id => `job ${id}`,
}
