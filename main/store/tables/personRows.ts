/**
 * Which rows are about one person (`@id`), table by table. A car's own history goes with the car, whoever has it now; a
 * job belongs to the one it was done for. What is not here is about nobody in particular.
 */
const theirs = (table: string) => `(select "id" from "${table}" where "customerId" = @id)`
const ofCar = `"vehicleId" in ${theirs('Vehicle')}`
const ofJob = `"jobId" in ${theirs('Job')}`
const record = `(select "id" from "AppliedRecord" where ${ofJob})`
const said = (entity: string, table: string) => `("entity" = '${entity}' and "entityId" in ${theirs(table)})`

export const personRows: Readonly<Record<string, string>> = {
  Customer: '"id" = @id',
  Erasure: '"customerId" = @id',
  OwnerReach: '"customerId" = @id',
  Consent: '"customerId" = @id',
  Message: '"customerId" = @id',
  Bounce: `"messageId" in ${theirs('Message')}`,
  Contact: '"customerId" = @id',
  Merge: '"keptId" = @id or "goneId" = @id',
  OwnerChange: '"fromId" = @id or "toId" = @id',
  Vehicle: '"customerId" = @id',
  VehicleExposure: ofCar,
  Layer: ofCar,
  Inspection: `"layerId" in (select "id" from "Layer" where ${ofCar})`,
  UpkeepPlan: ofCar,
  UpkeepEntry: ofCar,
  Job: '"customerId" = @id',
  JobTreatment: ofJob,
  Quote: ofCar,
  QuoteVariant: `"quoteId" in (select "id" from "Quote" where ${ofCar})`,
  JobCharge: ofJob,
  Payment: ofJob,
  Invoice: ofJob,
  InvoiceLine: `"invoiceId" in (select "id" from "Invoice" where ${ofJob})`,
  JobStep: ofJob,
  StepDraw: ofJob,
  JobCheck: ofJob,
  ConditionCheck: ofJob,
  ForcedCure: ofJob,
  TestSpot: ofJob,
  JobLoan: ofJob,
  AppliedRecord: ofJob,
  AppliedEntry: `"recordId" in ${record}`,
  Intake: ofJob,
  IntakeEntry: `"intakeId" in (select "id" from "Intake" where ${ofJob})`,
  JobPhoto: ofJob,
  AfterWork: ofJob,
  PaintDecision: ofJob,
  JobWords: '"customerId" = @id',
  WaitingEntry: '"customerId" = @id',
  AuditLine: [
    `("entity" = 'customer' and "entityId" = @id)`,
    said('vehicle', 'Vehicle'),
    said('job', 'Job'),
    said('message', 'Message'),
  ].join(' or '),
}
