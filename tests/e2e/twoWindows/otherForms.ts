/** The other forms: each enters something new or does one act, so that nothing of another window can be overwritten. */
export const otherForms: Readonly<Record<string, string>> = {
  'parts/OutToday.tsx': 'a new absence, or a new closure of a bay',
  'parts/shelf/CountForm.tsx': 'a count, a line of its own in the ledger',
  'screens/applied/CorrectionForm.tsx': 'a further page',
  'screens/car/AwayAndSold.tsx': 'an act that is taken back by another',
  'screens/car/InspectForm.tsx': 'a new inspection',
  'screens/car/LayerForm.tsx': 'a new layer',
  'screens/car/NewOwner.tsx':
    'an act; a second one is refused by the version of the car, in tests/services/upkeep/changeHands.test.ts',
  'screens/closeOfDay/LearnCode.tsx': 'a new code',
  'screens/closeOfDay/StepCard.tsx': 'confirmed once: the card leaves every window with it',
  'screens/conditions/Sensors.tsx': 'a new sensor',
  'screens/conditions/TypeReading.tsx': 'a new reading',
  'screens/customers/Consents.tsx': 'a line of its own in the ledger of consent',
  'screens/customers/NewCustomer.tsx': 'a new customer',
  'screens/intake/CorrectionForm.tsx': 'a further page',
  'screens/job/Heatings.tsx': 'a new heated cure',
  'screens/job/TestSpot.tsx':
    'acts on the job; a second one is refused by its version, in tests/services/job/testSpot.test.ts',
  'screens/money/CreditForm.tsx':
    'a new credit note; one that another window has issued meanwhile is told, in tests/services/money/issue.test.ts',
  'screens/money/bill/IssueForm.tsx': 'issued once: a second one is refused by the version of the job',
  'screens/money/bill/Payments.tsx':
    'a new payment; one that another window has taken meanwhile is told, in tests/services/money/payments.test.ts',
  'screens/money/quotes/NewQuote.tsx':
    'a new quote with a number of its own, in tests/services/money/quotes.test.ts',
  'screens/money/quotes/SignForm.tsx':
    'signed once; a second signature is refused by the version, in tests/services/money/quotes.test.ts',
  'screens/settings/BackupsSection.tsx':
    'a folder of this computer; a second save is refused by its version, in tests/services/backup/copying.test.ts',
  'screens/shelf/orders/NewOrder.tsx': 'a new order',
  'screens/shelf/orders/SendDialog.tsx': 'sent once; a second sending is refused by the order’s status',
  'screens/shelf/product/MixForm.tsx': 'a new bottle',
  'screens/shelf/product/ReceiveForm.tsx': 'new bottles',
  'screens/shelf/product/Reusables.tsx': 'a new set',
  'screens/shelf/product/SetForm.tsx':
    'an act; a second one is refused by the version of the set, in tests/services/shelf/reusables.test.ts',
  'screens/shelf/product/TakeForm.tsx': 'a line of its own in the ledger',
  'screens/shelf/product/WasteForm.tsx': 'a line of its own in the ledger',
  'screens/shelf/safety/SheetUpload.tsx': 'a newer sheet; the one before stays on file',
  'screens/upkeep/due/VisitActs.tsx': 'an act that is taken back by another',
  'screens/upkeep/due/WriteDialog.tsx': 'a new reminder',
  'screens/upkeep/feeds/Feeds.tsx': 'a new feed',
  'screens/upkeep/reminders/BounceForm.tsx': 'a report that is read',
  'screens/upkeep/reminders/Outcomes.tsx': 'what an owner answered; the last word counts',
  'screens/welcome/Welcome.tsx': 'a new shop, of which there is one',
}
