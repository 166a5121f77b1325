-- AlterTable
ALTER TABLE "AuditLine" ADD COLUMN "actId" INTEGER;

-- AlterTable
ALTER TABLE "Job" ADD COLUMN "fetchAt" INTEGER;

-- CreateTable
CREATE TABLE "Act" (
    "id" INTEGER NOT NULL PRIMARY KEY AUTOINCREMENT,
    "at" INTEGER NOT NULL,
    "who" TEXT NOT NULL,
    "deskId" TEXT NOT NULL DEFAULT '',
    "rows" INTEGER,
    "takesBackId" INTEGER,
    "takenBackById" INTEGER
);

-- CreateTable
CREATE TABLE "ActRow" (
    "seq" INTEGER NOT NULL PRIMARY KEY AUTOINCREMENT,
    "actId" INTEGER NOT NULL,
    "table" TEXT NOT NULL,
    "key" TEXT NOT NULL,
    "before" TEXT,
    "after" TEXT,
    CONSTRAINT "ActRow_actId_fkey" FOREIGN KEY ("actId") REFERENCES "Act" ("id") ON DELETE CASCADE ON UPDATE CASCADE
);

-- CreateTable
CREATE TABLE "WaitingEntry" (
    "id" TEXT NOT NULL PRIMARY KEY,
    "customerId" TEXT NOT NULL,
    "vehicleId" TEXT NOT NULL,
    "treatmentIds" JSONB NOT NULL,
    "condition" TEXT NOT NULL DEFAULT 'good',
    "scope" TEXT NOT NULL DEFAULT 'whole',
    "fromOn" TEXT NOT NULL,
    "toOn" TEXT NOT NULL,
    "weekdays" JSONB NOT NULL DEFAULT '[]',
    "note" TEXT NOT NULL DEFAULT '',
    "createdAt" INTEGER NOT NULL,
    "heldJobId" TEXT,
    "askedAt" INTEGER,
    "outcome" TEXT,
    "endedAt" INTEGER,
    "version" INTEGER NOT NULL DEFAULT 1,
    CONSTRAINT "WaitingEntry_customerId_fkey" FOREIGN KEY ("customerId") REFERENCES "Customer" ("id") ON DELETE RESTRICT ON UPDATE CASCADE,
    CONSTRAINT "WaitingEntry_vehicleId_fkey" FOREIGN KEY ("vehicleId") REFERENCES "Vehicle" ("id") ON DELETE RESTRICT ON UPDATE CASCADE,
    CONSTRAINT "WaitingEntry_heldJobId_fkey" FOREIGN KEY ("heldJobId") REFERENCES "Job" ("id") ON DELETE SET NULL ON UPDATE CASCADE
);

-- CreateTable
CREATE TABLE "JobWords" (
    "id" TEXT NOT NULL PRIMARY KEY,
    "mailId" TEXT NOT NULL,
    "jobId" TEXT NOT NULL,
    "customerId" TEXT NOT NULL,
    "kind" TEXT NOT NULL,
    "channel" TEXT NOT NULL,
    "address" TEXT NOT NULL,
    "language" TEXT NOT NULL,
    "subject" TEXT NOT NULL,
    "body" TEXT NOT NULL,
    "state" TEXT NOT NULL,
    "attempts" INTEGER NOT NULL DEFAULT 0,
    "notBeforeAt" INTEGER,
    "startedAt" INTEGER,
    "sentAt" INTEGER,
    "failure" JSONB,
    "waiting" TEXT,
    "withdrawnBecause" TEXT,
    "createdAt" INTEGER NOT NULL,
    "approvedBy" TEXT NOT NULL,
    "version" INTEGER NOT NULL DEFAULT 1,
    CONSTRAINT "JobWords_jobId_fkey" FOREIGN KEY ("jobId") REFERENCES "Job" ("id") ON DELETE RESTRICT ON UPDATE CASCADE,
    CONSTRAINT "JobWords_customerId_fkey" FOREIGN KEY ("customerId") REFERENCES "Customer" ("id") ON DELETE RESTRICT ON UPDATE CASCADE
);

-- AlterTable
ALTER TABLE "MoneyRules" ADD COLUMN "noShowMinor" INTEGER NOT NULL DEFAULT 0;
ALTER TABLE "MoneyRules" ADD COLUMN "keptDayMinor" INTEGER NOT NULL DEFAULT 0;

-- CreateIndex
CREATE INDEX "Act_at_idx" ON "Act"("at");

-- CreateIndex
CREATE INDEX "ActRow_actId_idx" ON "ActRow"("actId");

-- CreateIndex
CREATE INDEX "WaitingEntry_outcome_createdAt_idx" ON "WaitingEntry"("outcome", "createdAt");

-- CreateIndex
CREATE INDEX "WaitingEntry_customerId_idx" ON "WaitingEntry"("customerId");

-- CreateIndex
CREATE INDEX "WaitingEntry_vehicleId_idx" ON "WaitingEntry"("vehicleId");

-- CreateIndex
CREATE UNIQUE INDEX "JobWords_mailId_key" ON "JobWords"("mailId");

-- CreateIndex
CREATE INDEX "JobWords_jobId_idx" ON "JobWords"("jobId");

-- CreateIndex
CREATE INDEX "JobWords_customerId_idx" ON "JobWords"("customerId");

-- CreateIndex
CREATE INDEX "JobWords_state_channel_idx" ON "JobWords"("state", "channel");
