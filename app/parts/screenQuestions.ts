import { say } from '../../main/domain/language/index.ts'

export interface Question {
  asks: string
  answer: string
}

/** What people ask of each screen, by the beginning of its address. */
const asked: readonly { at: string; questions: readonly Question[] }[] = [
  {
    at: '/',
    questions: [
      {
        asks: say('Why does a car stand there while nobody works on it?'),
        answer: say(
          'Hatched time is waiting for the next bay or person. A curve is a cure: until its triangle nobody touches the car.',
        ),
      },
      {
        asks: say('How do I move a car?'),
        answer: say(
          'Drag it, or go to it with Tab and use the keys below. What does not fit is said before it is put down.',
        ),
      },
      {
        asks: say('A promise will not be kept. What now?'),
        answer: say(
          'The line above the board names the car. Plan it again and tell the customer, or open all ways out.',
        ),
      },
    ],
  },
  {
    at: '/book',
    questions: [
      {
        asks: say('The caller is new. Where do they go?'),
        answer: say(
          'Type the name, number or plate. If nobody is found, it fills in a new customer. Nothing is saved until a place is held or booked.',
        ),
      },
      {
        asks: say('Why is there nothing sooner?'),
        answer: say('The line under the offers names what stands in the way; “why” opens the rest.'),
      },
      {
        asks: say('What does holding a place do?'),
        answer: say(
          'It keeps the place for this caller for a while. If nobody confirms it by then, it is free again.',
        ),
      },
    ],
  },
  {
    at: '/morning',
    questions: [
      {
        asks: say('What does “Hands off until” mean?'),
        answer: say('Until then the coat is too soft: the car is not touched, not wetted and not moved.'),
      },
      {
        asks: say('Somebody is sick. What now?'),
        answer: say(
          'Press “Sick or down…”. What that touches is shown, each with a way out, before anything moves.',
        ),
      },
      {
        asks: say('Can I show it on a wall screen?'),
        answer: say('Yes: leave this screen open on it. It updates by itself.'),
      },
    ],
  },
  {
    at: '/plan',
    questions: [
      {
        asks: say('Does anything move by itself?'),
        answer: say('No. A search only proposes; nothing is written before you accept it.'),
      },
      {
        asks: say('May I take a part of a proposal?'),
        answer: say('Yes. A car takes along those whose places it needs, and the rest stays as it is.'),
      },
      {
        asks: say('What is “What if” for?'),
        answer: say(
          'It shows the floor as it would be with somebody away, a bay closed or a rush car, without changing anything.',
        ),
      },
    ],
  },
  {
    at: '/close',
    questions: [
      {
        asks: say('What must I confirm?'),
        answer: say(
          'What each finished step used. What used its recipe goes with one key; type only what was different.',
        ),
      },
      {
        asks: say('Why order today already?'),
        answer: say(
          'Because of how long the supplier takes: ordered later, it comes after a booked car needs it.',
        ),
      },
      {
        asks: say('I confirmed a wrong amount. What now?'),
        answer: say("Take it back at once with Ctrl Z, or later in the product's ledger."),
      },
    ],
  },
  {
    at: '/shelf',
    questions: [
      {
        asks: say('What do the blocks mean?'),
        answer: say(
          'Each is a bottle, as long as what is in it. An ochre one is open, a dashed one is past its date.',
        ),
      },
      {
        asks: say('Where does the advice come from?'),
        answer: say(
          'From what booked cars will use, what is used besides, and how long a delivery takes. “Why” opens the figures.',
        ),
      },
      {
        asks: say('The bottle holds more or less than shown. What now?'),
        answer: say('Open the product and press “Count” beside the bottle.'),
      },
    ],
  },
  {
    at: '/money',
    questions: [
      {
        asks: say('Can I change an invoice?'),
        answer: say('No, an issued invoice stays as it is. Give a credit note, and issue a new one.'),
      },
      {
        asks: say('Where do the prices come from?'),
        answer: say(
          'From the treatments as they were sold. What comes on top or off stands on the bill of the job.',
        ),
      },
      {
        asks: say('Who still owes us?'),
        answer: say("“Owed” lists it; a customer's statement shows how it came about."),
      },
    ],
  },
  {
    at: '/conditions',
    questions: [
      {
        asks: say('Why take readings?'),
        answer: say(
          'A coat cures by the temperature it stands in. Without readings the usual temperature of the bay counts.',
        ),
      },
      {
        asks: say('What is “Coldest panel to coat”?'),
        answer: say('A little above the dew point: a colder panel may sweat under the coat.'),
      },
      {
        asks: say('A reading is wrong. What now?'),
        answer: say('Press “Take out” beside it; the clocks of the cars follow.'),
      },
    ],
  },
  {
    at: '/upkeep',
    questions: [
      {
        asks: say('Why is somebody due?'),
        answer: say('“Why then” beside the visit shows what it was counted from, and by which plan.'),
      },
      {
        asks: say('Whom may I write to?'),
        answer: say(
          'Only those who agreed, and only by the ways they agreed to; the others are not offered.',
        ),
      },
      {
        asks: say('They do not want it this time. What now?'),
        answer: say('Press “More”, then “Skip”, and write down why.'),
      },
    ],
  },
  {
    at: '/customers',
    questions: [
      {
        asks: say('Somebody is on file twice. What now?'),
        answer: say(
          'Open one of the two: under “The same person twice?” they are compared and made one, which can be undone.',
        ),
      },
      {
        asks: say('How do I find somebody fast?'),
        answer: say('Ctrl K finds names, plates, numbers and jobs from any screen.'),
      },
      {
        asks: say('Somebody asks for their data. Where is it?'),
        answer: say('On their page, under “Everything about this person”: save their file, or erase them.'),
      },
    ],
  },
  {
    at: '/cars',
    questions: [
      { asks: say('Why does the next visit come then?'), answer: say('“Why then” beside the plan says it.') },
      {
        asks: say('What does the curve tell?'),
        answer: say(
          'How long coats like this one kept working on the cars you looked at; the band shows how sure that is.',
        ),
      },
      {
        asks: say('What happens when I accept a proposed date?'),
        answer: say('The plan counts with the new interval from then on. Nothing moves before you accept.'),
      },
    ],
  },
  {
    at: '/jobs',
    questions: [
      {
        asks: say('It happened earlier. What now?'),
        answer: say('“It happened earlier…” beside the next act takes the real time.'),
      },
      {
        asks: say('It used something other than the recipe. What now?'),
        answer: say(
          '“Used something else” takes what was really used; finishing the step confirms the recipe.',
        ),
      },
      {
        asks: say('The owner comes before the earliest pick-up. What now?'),
        answer: say('Handing over then asks for a reason, and keeps it. The data sheet decides.'),
      },
    ],
  },
  {
    at: '/settings',
    questions: [
      {
        asks: say('Do booked cars change with the settings?'),
        answer: say(
          'No: they keep the steps and prices they were sold with. Hours and bays are asked about first where cars are booked.',
        ),
      },
      {
        asks: say('What does archiving do?'),
        answer: say('It is not offered any more; all that was done with it stays, and it can be put back.'),
      },
      {
        asks: say('Where are the copies of our data?'),
        answer: say('Under Backups: one every hour, and a second place if you name one.'),
      },
    ],
  },
]

/** The questions of the screen at an address; the board is at the root. */
export function questionsAt(path: string): readonly Question[] {
  const screen = `/${path.split('/')[1] ?? ''}`
  return asked.find(({ at }) => at === screen)?.questions ?? []
}
