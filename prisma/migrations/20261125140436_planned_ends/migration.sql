-- RedefineTables
PRAGMA defer_foreign_keys=ON;
PRAGMA foreign_keys=OFF;
CREATE TABLE "new_Job" (
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
    "plannedHandoverAt" INTEGER NOT NULL DEFAULT 0,
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
INSERT INTO "new_Job" ("advisedAt", "arrivedAt", "askedAt", "condition", "createdAt", "customerId", "dropOffAt", "handoverAt", "heldUntilAt", "id", "leftAt", "note", "number", "promisedAt", "safeAt", "status", "vehicleId", "version") SELECT "advisedAt", "arrivedAt", "askedAt", "condition", "createdAt", "customerId", "dropOffAt", "handoverAt", "heldUntilAt", "id", "leftAt", "note", "number", "promisedAt", "safeAt", "status", "vehicleId", "version" FROM "Job";
DROP TABLE "Job";
ALTER TABLE "new_Job" RENAME TO "Job";
CREATE UNIQUE INDEX "Job_number_key" ON "Job"("number");
CREATE INDEX "Job_status_handoverAt_idx" ON "Job"("status", "handoverAt");
CREATE INDEX "Job_vehicleId_idx" ON "Job"("vehicleId");
CREATE INDEX "Job_customerId_idx" ON "Job"("customerId");
CREATE TABLE "new_JobStep" (
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
    "plannedAt" INTEGER NOT NULL DEFAULT 0,
    "plannedEndAt" INTEGER NOT NULL DEFAULT 0,
    "startAt" INTEGER NOT NULL,
    "endAt" INTEGER NOT NULL,
    "actualStartAt" INTEGER,
    "actualEndAt" INTEGER,
    "movedToBayId" TEXT,
    "movedAt" INTEGER,
    CONSTRAINT "JobStep_jobId_fkey" FOREIGN KEY ("jobId") REFERENCES "Job" ("id") ON DELETE RESTRICT ON UPDATE CASCADE,
    CONSTRAINT "JobStep_productId_fkey" FOREIGN KEY ("productId") REFERENCES "Product" ("id") ON DELETE SET NULL ON UPDATE CASCADE
);
INSERT INTO "new_JobStep" ("actualEndAt", "actualStartAt", "bayId", "crewCount", "endAt", "id", "jobId", "kind", "minutes", "moveAfterMin", "movedAt", "movedToBayId", "name", "needs", "plannedAt", "position", "productId", "sameBay", "skill", "splittable", "stage", "startAt", "waitMax", "waitMin") SELECT "actualEndAt", "actualStartAt", "bayId", "crewCount", "endAt", "id", "jobId", "kind", "minutes", "moveAfterMin", "movedAt", "movedToBayId", "name", "needs", "plannedAt", "position", "productId", "sameBay", "skill", "splittable", "stage", "startAt", "waitMax", "waitMin" FROM "JobStep";
DROP TABLE "JobStep";
ALTER TABLE "new_JobStep" RENAME TO "JobStep";
CREATE INDEX "JobStep_bayId_startAt_idx" ON "JobStep"("bayId", "startAt");
CREATE UNIQUE INDEX "JobStep_jobId_position_key" ON "JobStep"("jobId", "position");
-- Until now what was planned and what is projected were one.
UPDATE "JobStep" SET "plannedEndAt" = "endAt";
UPDATE "Job" SET "plannedHandoverAt" = "handoverAt";
PRAGMA foreign_keys=ON;
PRAGMA defer_foreign_keys=OFF;
