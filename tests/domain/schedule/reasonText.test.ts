import { describe, expect, test } from 'vitest'
import type { BindingCode, Reason, ViolationCode } from '../../../main/domain/schedule/reasons.ts'
import { reasonText, type Words } from '../../../main/domain/schedule/reasonText.ts'

const words: Words = {
  minute: at => (at === 200 ? 'Tuesday 03:20' : at === 480 ? '08:00' : '14:00'),
  duration: minutes => `${minutes} min`,
  bay: id => `bay ${id}`,
  person: id => `person ${id}`,
  skill: skill => `"${skill}"`,
  capability: capability => capability,
  step: index => ['wash', 'first layer', 'second layer', 'cure'][index]!,
  job: id => `job ${id}`,
}

// One of each code; the compiler asks for a new line here whenever there is a new code.
const samples: Record<ViolationCode | BindingCode, [Omit<Reason, 'code'>, string]> = {
  stepCount: [{ minutes: 3, limit: 2 }, 'the plan has 2 steps, the job 3'],
  offGrid: [{ from: 1, limit: 15 }, '14:00 is off the 15 min booking grid'],
  beforeRelease: [{ limit: 480 }, 'the job may not start before 08:00'],
  beyondHorizon: [{ limit: 480 }, 'nothing is planned after 08:00'],
  wrongEnd: [{ step: 0, minutes: 60, limit: 480, to: 1 }, 'wash takes 60 min and so ends 08:00, not 14:00'],
  closedHours: [{ step: 0, minutes: 60, from: 480 }, 'wash needs 60 min of opening hours from 08:00'],
  doorsClosed: [{ from: 200, to: 200 }, 'the shop is closed Tuesday 03:20: no car comes, moves or goes then'],
  waitTooShort: [
    { step: 2, minutes: 60, from: 1 },
    'second layer may start only 60 min after the step before, which ends 14:00',
  ],
  waitTooLong: [
    { step: 2, minutes: 60, from: 1 },
    'second layer must start within 60 min of the step before, which ends 14:00',
  ],
  unknownBay: [{ step: 0, bay: '9' }, 'there is no bay bay 9'],
  unfitBay: [
    { step: 0, bay: '2', capability: 'wet work' },
    'bay 2 is not equipped for wet work, which wash needs',
  ],
  leftBay: [{ step: 3, bay: '2' }, 'cure must stay in bay 2'],
  bayTaken: [{ bay: '2', from: 0, to: 1 }, 'bay 2 is taken until 14:00'],
  bayClosed: [{ bay: '2', from: 480, to: 1 }, 'bay 2 is closed from 08:00 until 14:00'],
  outsidePin: [{ step: 0, from: 480, to: 1 }, 'wash must start between 08:00 and 14:00'],
  movedInHold: [{ step: 3 }, 'the car may not be moved during cure'],
  crewSize: [{ step: 0, minutes: 2, limit: 1, skill: 'wash' }, 'wash takes 2 people for "wash", not 1'],
  unknownPerson: [{ person: 'x' }, 'there is no person x in the crew'],
  unskilled: [{ person: 'x', skill: 'coat' }, 'person x does not have the skill "coat"'],
  personAway: [{ person: 'x', from: 480, to: 1 }, 'person x is not free from 08:00 until 14:00'],
  personTwice: [{ step: 0, person: 'x' }, 'person x is named twice for wash'],
  earlyHandover: [{ from: 480, to: 1 }, 'the last step ends 14:00, after the handover 08:00'],
  crewBusy: [
    { step: 1, skill: 'coat', minutes: 1, to: 1 },
    'nobody with the skill "coat" is free for first layer before 14:00',
  ],
  cure: [{ step: 3, from: 200, to: 480 }, 'cure runs until Tuesday 03:20; the shop opens 08:00'],
  holdsDoor: [{ step: 0, from: 200, to: 480 }, 'wash ends Tuesday 03:20; the shop opens 08:00'],
  shopClosed: [{ from: 1, to: 480 }, 'the shop is closed from 14:00 until 08:00'],
  recoatWait: [
    { step: 2, minutes: 60, to: 1 },
    'second layer may start only 60 min after the step before it: 14:00',
  ],
  recoatLimit: [{ step: 2, minutes: 60 }, 'second layer must start within 60 min of the step before it'],
  pinned: [{ step: 0, from: 480 }, 'wash is kept to 08:00'],
  noBay: [{ step: 0, capability: 'wet work' }, 'no bay is equipped for wet work, which wash needs'],
  noSkill: [
    { step: 1, skill: 'coat', minutes: 2, limit: 1 },
    'first layer takes 2 people with the skill "coat"; the crew has 1',
  ],
  tooLong: [
    { step: 0, minutes: 660, limit: 600 },
    'wash takes 660 min unbroken; the longest opening has 600 min',
  ],
  onlyBay: [{ step: 3 }, 'cure must stay in the bay of the step before'],
  horizon: [{ to: 1 }, 'the plan ends 14:00; the job would go on after it'],
  workItself: [{ to: 1 }, 'the work itself lasts until 14:00'],
}

describe('every code has its sentence', () => {
  for (const [code, [reason, sentence]] of Object.entries(samples))
    test(code, () => {
      expect(reasonText({ ...reason, code: code as keyof typeof samples }, words)).toBe(sentence)
    })
})
