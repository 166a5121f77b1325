-- AlterTable
ALTER TABLE "ShelfProduct" ADD COLUMN "lifeKeptAt" INTEGER;

-- RedefineTables
PRAGMA defer_foreign_keys=ON;
PRAGMA foreign_keys=OFF;
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
    "help" JSONB,
    "splittable" BOOLEAN NOT NULL DEFAULT false,
    "sameBay" BOOLEAN NOT NULL DEFAULT false,
    "waitMin" INTEGER,
    "waitMax" INTEGER,
    "minutes" INTEGER NOT NULL,
    "missed" TEXT,
    "missedMin" INTEGER,
    "takesOff" BOOLEAN NOT NULL DEFAULT false,
    "missedReason" TEXT,
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
INSERT INTO "new_JobStep" ("actualEndAt", "actualStartAt", "bayId", "crewCount", "endAt", "help", "id", "jobId", "kind", "minutes", "missed", "missedMin", "missedReason", "moveAfterMin", "movedAt", "movedToBayId", "name", "needs", "plannedAt", "plannedEndAt", "position", "productId", "sameBay", "skill", "splittable", "stage", "startAt", "waitMax", "waitMin") SELECT "actualEndAt", "actualStartAt", "bayId", "crewCount", "endAt", "help", "id", "jobId", "kind", "minutes", "missed", "missedMin", "missedReason", "moveAfterMin", "movedAt", "movedToBayId", "name", "needs", "plannedAt", "plannedEndAt", "position", "productId", "sameBay", "skill", "splittable", "stage", "startAt", "waitMax", "waitMin" FROM "JobStep";
DROP TABLE "JobStep";
ALTER TABLE "new_JobStep" RENAME TO "JobStep";
CREATE INDEX "JobStep_bayId_startAt_idx" ON "JobStep"("bayId", "startAt");
CREATE UNIQUE INDEX "JobStep_jobId_position_key" ON "JobStep"("jobId", "position");
PRAGMA foreign_keys=ON;
PRAGMA defer_foreign_keys=OFF;
