-- CreateTable
CREATE TABLE "Customer" (
    "id" TEXT NOT NULL PRIMARY KEY,
    "name" TEXT NOT NULL,
    "phone" TEXT,
    "email" TEXT,
    "note" TEXT NOT NULL DEFAULT '',
    "archivedAt" INTEGER,
    "version" INTEGER NOT NULL DEFAULT 1
);

-- CreateTable
CREATE TABLE "Vehicle" (
    "id" TEXT NOT NULL PRIMARY KEY,
    "customerId" TEXT NOT NULL,
    "plate" TEXT NOT NULL,
    "make" TEXT NOT NULL DEFAULT '',
    "model" TEXT NOT NULL DEFAULT '',
    "colour" TEXT NOT NULL DEFAULT '',
    "year" INTEGER,
    "vin" TEXT,
    "sizeClass" TEXT NOT NULL,
    "finish" TEXT NOT NULL DEFAULT 'gloss',
    "note" TEXT NOT NULL DEFAULT '',
    "archivedAt" INTEGER,
    "version" INTEGER NOT NULL DEFAULT 1,
    CONSTRAINT "Vehicle_customerId_fkey" FOREIGN KEY ("customerId") REFERENCES "Customer" ("id") ON DELETE RESTRICT ON UPDATE CASCADE
);

-- CreateTable
CREATE TABLE "AuditLine" (
    "id" TEXT NOT NULL PRIMARY KEY,
    "at" INTEGER NOT NULL,
    "who" TEXT NOT NULL,
    "act" TEXT NOT NULL,
    "entity" TEXT NOT NULL,
    "entityId" TEXT NOT NULL,
    "detail" JSONB NOT NULL
);

-- CreateTable
CREATE TABLE "Shop" (
    "id" INTEGER NOT NULL PRIMARY KEY AUTOINCREMENT DEFAULT 1,
    "name" TEXT NOT NULL,
    "zone" TEXT NOT NULL,
    "currency" TEXT NOT NULL,
    "units" TEXT NOT NULL DEFAULT 'metric',
    "country" TEXT NOT NULL DEFAULT 'US',
    "gridMin" INTEGER NOT NULL DEFAULT 15,
    "handoverRule" TEXT NOT NULL DEFAULT 'minimum',
    "weekly" JSONB NOT NULL,
    "conditionFactors" JSONB NOT NULL,
    "phone" TEXT,
    "email" TEXT,
    "address" TEXT,
    "demo" BOOLEAN NOT NULL DEFAULT false,
    "version" INTEGER NOT NULL DEFAULT 1
);

-- CreateTable
CREATE TABLE "HoursException" (
    "id" TEXT NOT NULL PRIMARY KEY,
    "date" TEXT NOT NULL,
    "hours" JSONB NOT NULL,
    "note" TEXT NOT NULL DEFAULT ''
);

-- CreateTable
CREATE TABLE "Bay" (
    "id" TEXT NOT NULL PRIMARY KEY,
    "name" TEXT NOT NULL,
    "position" INTEGER NOT NULL,
    "capabilities" JSONB NOT NULL,
    "archivedAt" INTEGER,
    "version" INTEGER NOT NULL DEFAULT 1
);

-- CreateTable
CREATE TABLE "BayClosure" (
    "id" TEXT NOT NULL PRIMARY KEY,
    "bayId" TEXT NOT NULL,
    "fromAt" INTEGER NOT NULL,
    "toAt" INTEGER NOT NULL,
    "reason" TEXT NOT NULL DEFAULT '',
    CONSTRAINT "BayClosure_bayId_fkey" FOREIGN KEY ("bayId") REFERENCES "Bay" ("id") ON DELETE RESTRICT ON UPDATE CASCADE
);

-- CreateTable
CREATE TABLE "CrewMember" (
    "id" TEXT NOT NULL PRIMARY KEY,
    "name" TEXT NOT NULL,
    "position" INTEGER NOT NULL,
    "skills" JSONB NOT NULL,
    "weekly" JSONB,
    "archivedAt" INTEGER,
    "version" INTEGER NOT NULL DEFAULT 1
);

-- CreateTable
CREATE TABLE "CrewAbsence" (
    "id" TEXT NOT NULL PRIMARY KEY,
    "crewId" TEXT NOT NULL,
    "fromAt" INTEGER NOT NULL,
    "toAt" INTEGER NOT NULL,
    "reason" TEXT NOT NULL DEFAULT '',
    CONSTRAINT "CrewAbsence_crewId_fkey" FOREIGN KEY ("crewId") REFERENCES "CrewMember" ("id") ON DELETE RESTRICT ON UPDATE CASCADE
);

-- CreateTable
CREATE TABLE "Product" (
    "id" TEXT NOT NULL PRIMARY KEY,
    "name" TEXT NOT NULL,
    "kind" TEXT NOT NULL,
    "cureProfile" JSONB,
    "archivedAt" INTEGER,
    "version" INTEGER NOT NULL DEFAULT 1
);

-- CreateTable
CREATE TABLE "Treatment" (
    "id" TEXT NOT NULL PRIMARY KEY,
    "name" TEXT NOT NULL,
    "position" INTEGER NOT NULL,
    "summary" TEXT NOT NULL DEFAULT '',
    "prices" JSONB NOT NULL,
    "archivedAt" INTEGER,
    "version" INTEGER NOT NULL DEFAULT 1
);

-- CreateTable
CREATE TABLE "TreatmentStep" (
    "id" TEXT NOT NULL PRIMARY KEY,
    "treatmentId" TEXT NOT NULL,
    "position" INTEGER NOT NULL,
    "name" TEXT NOT NULL,
    "stage" TEXT NOT NULL,
    "needs" TEXT NOT NULL,
    "skill" TEXT,
    "crew" INTEGER NOT NULL DEFAULT 1,
    "splittable" BOOLEAN NOT NULL DEFAULT false,
    "sameBay" BOOLEAN NOT NULL DEFAULT false,
    "waitMin" INTEGER,
    "waitMax" INTEGER,
    "minutes" JSONB NOT NULL,
    "byCondition" BOOLEAN NOT NULL DEFAULT false,
    "productId" TEXT,
    CONSTRAINT "TreatmentStep_treatmentId_fkey" FOREIGN KEY ("treatmentId") REFERENCES "Treatment" ("id") ON DELETE RESTRICT ON UPDATE CASCADE,
    CONSTRAINT "TreatmentStep_productId_fkey" FOREIGN KEY ("productId") REFERENCES "Product" ("id") ON DELETE SET NULL ON UPDATE CASCADE
);

-- CreateTable
CREATE TABLE "Job" (
    "id" TEXT NOT NULL PRIMARY KEY,
    "number" INTEGER NOT NULL,
    "customerId" TEXT NOT NULL,
    "vehicleId" TEXT NOT NULL,
    "status" TEXT NOT NULL,
    "heldUntilAt" INTEGER,
    "askedAt" INTEGER,
    "condition" TEXT NOT NULL DEFAULT 'good',
    "dropOffAt" INTEGER NOT NULL,
    "promisedAt" INTEGER NOT NULL,
    "handoverAt" INTEGER NOT NULL,
    "safeAt" INTEGER NOT NULL,
    "advisedAt" INTEGER NOT NULL,
    "arrivedAt" INTEGER,
    "leftAt" INTEGER,
    "note" TEXT NOT NULL DEFAULT '',
    "createdAt" INTEGER NOT NULL,
    "version" INTEGER NOT NULL DEFAULT 1,
    CONSTRAINT "Job_customerId_fkey" FOREIGN KEY ("customerId") REFERENCES "Customer" ("id") ON DELETE RESTRICT ON UPDATE CASCADE,
    CONSTRAINT "Job_vehicleId_fkey" FOREIGN KEY ("vehicleId") REFERENCES "Vehicle" ("id") ON DELETE RESTRICT ON UPDATE CASCADE
);

-- CreateTable
CREATE TABLE "JobTreatment" (
    "id" TEXT NOT NULL PRIMARY KEY,
    "jobId" TEXT NOT NULL,
    "treatmentId" TEXT NOT NULL,
    "position" INTEGER NOT NULL,
    "name" TEXT NOT NULL,
    "priceMinor" INTEGER NOT NULL,
    CONSTRAINT "JobTreatment_jobId_fkey" FOREIGN KEY ("jobId") REFERENCES "Job" ("id") ON DELETE RESTRICT ON UPDATE CASCADE,
    CONSTRAINT "JobTreatment_treatmentId_fkey" FOREIGN KEY ("treatmentId") REFERENCES "Treatment" ("id") ON DELETE RESTRICT ON UPDATE CASCADE
);

-- CreateTable
CREATE TABLE "JobStep" (
    "id" TEXT NOT NULL PRIMARY KEY,
    "jobId" TEXT NOT NULL,
    "position" INTEGER NOT NULL,
    "kind" TEXT NOT NULL,
    "name" TEXT NOT NULL,
    "stage" TEXT NOT NULL,
    "needs" TEXT NOT NULL,
    "skill" TEXT,
    "crewCount" INTEGER NOT NULL DEFAULT 1,
    "splittable" BOOLEAN NOT NULL DEFAULT false,
    "sameBay" BOOLEAN NOT NULL DEFAULT false,
    "waitMin" INTEGER,
    "waitMax" INTEGER,
    "minutes" INTEGER NOT NULL,
    "moveAfterMin" INTEGER,
    "productId" TEXT,
    "bayId" TEXT NOT NULL,
    "startAt" INTEGER NOT NULL,
    "endAt" INTEGER NOT NULL,
    "actualStartAt" INTEGER,
    "actualEndAt" INTEGER,
    "movedToBayId" TEXT,
    "movedAt" INTEGER,
    CONSTRAINT "JobStep_jobId_fkey" FOREIGN KEY ("jobId") REFERENCES "Job" ("id") ON DELETE RESTRICT ON UPDATE CASCADE,
    CONSTRAINT "JobStep_productId_fkey" FOREIGN KEY ("productId") REFERENCES "Product" ("id") ON DELETE SET NULL ON UPDATE CASCADE
);

-- CreateTable
CREATE TABLE "JobStepCrew" (
    "stepId" TEXT NOT NULL,
    "crewId" TEXT NOT NULL,

    PRIMARY KEY ("stepId", "crewId"),
    CONSTRAINT "JobStepCrew_stepId_fkey" FOREIGN KEY ("stepId") REFERENCES "JobStep" ("id") ON DELETE RESTRICT ON UPDATE CASCADE,
    CONSTRAINT "JobStepCrew_crewId_fkey" FOREIGN KEY ("crewId") REFERENCES "CrewMember" ("id") ON DELETE RESTRICT ON UPDATE CASCADE
);

-- CreateIndex
CREATE INDEX "Customer_name_idx" ON "Customer"("name");

-- CreateIndex
CREATE INDEX "Vehicle_customerId_idx" ON "Vehicle"("customerId");

-- CreateIndex
CREATE INDEX "Vehicle_plate_idx" ON "Vehicle"("plate");

-- CreateIndex
CREATE INDEX "AuditLine_entity_entityId_at_idx" ON "AuditLine"("entity", "entityId", "at");

-- CreateIndex
CREATE UNIQUE INDEX "HoursException_date_key" ON "HoursException"("date");

-- CreateIndex
CREATE INDEX "BayClosure_bayId_fromAt_idx" ON "BayClosure"("bayId", "fromAt");

-- CreateIndex
CREATE INDEX "CrewAbsence_crewId_fromAt_idx" ON "CrewAbsence"("crewId", "fromAt");

-- CreateIndex
CREATE INDEX "TreatmentStep_treatmentId_position_idx" ON "TreatmentStep"("treatmentId", "position");

-- CreateIndex
CREATE UNIQUE INDEX "Job_number_key" ON "Job"("number");

-- CreateIndex
CREATE INDEX "Job_status_handoverAt_idx" ON "Job"("status", "handoverAt");

-- CreateIndex
CREATE INDEX "Job_vehicleId_idx" ON "Job"("vehicleId");

-- CreateIndex
CREATE INDEX "Job_customerId_idx" ON "Job"("customerId");

-- CreateIndex
CREATE INDEX "JobTreatment_jobId_idx" ON "JobTreatment"("jobId");

-- CreateIndex
CREATE INDEX "JobStep_bayId_startAt_idx" ON "JobStep"("bayId", "startAt");

-- CreateIndex
CREATE UNIQUE INDEX "JobStep_jobId_position_key" ON "JobStep"("jobId", "position");

-- CreateIndex
CREATE INDEX "JobStepCrew_crewId_idx" ON "JobStepCrew"("crewId");
