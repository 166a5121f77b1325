-- AlterTable
ALTER TABLE "OwnerReach" ADD COLUMN "country" TEXT;
ALTER TABLE "Customer" ADD COLUMN "kind" TEXT NOT NULL DEFAULT 'person';
ALTER TABLE "Customer" ADD COLUMN "tags" JSONB NOT NULL DEFAULT '[]';
ALTER TABLE "Vehicle" ADD COLUMN "paint" TEXT NOT NULL DEFAULT 'unknown';

-- CreateTable
CREATE TABLE "DataImport" (
    "id" TEXT NOT NULL PRIMARY KEY,
    "kind" TEXT NOT NULL,
    "fileName" TEXT NOT NULL,
    "at" INTEGER NOT NULL,
    "who" TEXT NOT NULL,
    "fileRows" INTEGER NOT NULL,
    "added" INTEGER NOT NULL,
    "undoneAt" INTEGER
);

-- CreateTable
CREATE TABLE "ImportedRow" (
    "importId" TEXT NOT NULL,
    "entity" TEXT NOT NULL,
    "rowId" TEXT NOT NULL,

    PRIMARY KEY ("importId", "entity", "rowId"),
    CONSTRAINT "ImportedRow_importId_fkey" FOREIGN KEY ("importId") REFERENCES "DataImport" ("id") ON DELETE RESTRICT ON UPDATE CASCADE
);

-- CreateTable
CREATE TABLE "ImportMapping" (
    "columns" TEXT NOT NULL PRIMARY KEY,
    "reading" JSONB NOT NULL,
    "usedAt" INTEGER NOT NULL
);

-- CreateTable
CREATE TABLE "Contact" (
    "id" TEXT NOT NULL PRIMARY KEY,
    "customerId" TEXT NOT NULL,
    "name" TEXT NOT NULL,
    "role" TEXT NOT NULL DEFAULT '',
    "phone" TEXT,
    "email" TEXT,
    "callFirst" BOOLEAN NOT NULL DEFAULT false,
    "version" INTEGER NOT NULL DEFAULT 1,
    CONSTRAINT "Contact_customerId_fkey" FOREIGN KEY ("customerId") REFERENCES "Customer" ("id") ON DELETE RESTRICT ON UPDATE CASCADE
);

-- CreateTable
CREATE TABLE "OwnerChange" (
    "id" TEXT NOT NULL PRIMARY KEY,
    "vehicleId" TEXT NOT NULL,
    "fromId" TEXT NOT NULL,
    "toId" TEXT NOT NULL,
    "onDay" TEXT NOT NULL,
    "at" INTEGER NOT NULL,
    "who" TEXT NOT NULL,
    CONSTRAINT "OwnerChange_vehicleId_fkey" FOREIGN KEY ("vehicleId") REFERENCES "Vehicle" ("id") ON DELETE RESTRICT ON UPDATE CASCADE,
    CONSTRAINT "OwnerChange_fromId_fkey" FOREIGN KEY ("fromId") REFERENCES "Customer" ("id") ON DELETE RESTRICT ON UPDATE CASCADE,
    CONSTRAINT "OwnerChange_toId_fkey" FOREIGN KEY ("toId") REFERENCES "Customer" ("id") ON DELETE RESTRICT ON UPDATE CASCADE
);

-- CreateTable
CREATE TABLE "Merge" (
    "id" TEXT NOT NULL PRIMARY KEY,
    "keptId" TEXT NOT NULL,
    "goneId" TEXT NOT NULL,
    "at" INTEGER NOT NULL,
    "who" TEXT NOT NULL,
    "before" JSONB NOT NULL,
    "moved" JSONB NOT NULL,
    "undoneAt" INTEGER
);

-- CreateIndex
CREATE INDEX "DataImport_at_idx" ON "DataImport"("at");

-- CreateIndex
CREATE INDEX "ImportedRow_entity_rowId_idx" ON "ImportedRow"("entity", "rowId");

-- CreateIndex
CREATE INDEX "Contact_customerId_idx" ON "Contact"("customerId");

-- CreateIndex
CREATE INDEX "OwnerChange_vehicleId_idx" ON "OwnerChange"("vehicleId");

-- CreateIndex
CREATE INDEX "OwnerChange_fromId_idx" ON "OwnerChange"("fromId");

-- CreateIndex
CREATE INDEX "OwnerChange_toId_idx" ON "OwnerChange"("toId");

-- CreateIndex
CREATE INDEX "Merge_keptId_idx" ON "Merge"("keptId");

-- CreateIndex
CREATE INDEX "Merge_goneId_idx" ON "Merge"("goneId");

-- A plan goes only with the file it came in with; what was worked out of it goes too.
CREATE TRIGGER "PlanDue_of_a_plan_that_is_gone" AFTER DELETE ON "UpkeepPlan"
BEGIN
    DELETE FROM "PlanDue" WHERE "planId" = OLD."id";
END;
