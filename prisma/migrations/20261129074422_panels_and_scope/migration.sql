-- AlterTable
ALTER TABLE "Product" ADD COLUMN "finishes" JSONB;

-- AlterTable
ALTER TABLE "Vehicle" ADD COLUMN "panels" JSONB;

-- RedefineTables
PRAGMA defer_foreign_keys=ON;
PRAGMA foreign_keys=OFF;
CREATE TABLE "new_JobTreatment" (
    "id" TEXT NOT NULL PRIMARY KEY,
    "jobId" TEXT NOT NULL,
    "treatmentId" TEXT NOT NULL,
    "position" INTEGER NOT NULL,
    "name" TEXT NOT NULL,
    "priceMinor" INTEGER NOT NULL,
    "scope" TEXT NOT NULL DEFAULT 'whole',
    "share" REAL NOT NULL DEFAULT 1,
    "leftOut" TEXT NOT NULL DEFAULT '',
    CONSTRAINT "JobTreatment_jobId_fkey" FOREIGN KEY ("jobId") REFERENCES "Job" ("id") ON DELETE RESTRICT ON UPDATE CASCADE,
    CONSTRAINT "JobTreatment_treatmentId_fkey" FOREIGN KEY ("treatmentId") REFERENCES "Treatment" ("id") ON DELETE RESTRICT ON UPDATE CASCADE
);
INSERT INTO "new_JobTreatment" ("id", "jobId", "name", "position", "priceMinor", "treatmentId") SELECT "id", "jobId", "name", "position", "priceMinor", "treatmentId" FROM "JobTreatment";
DROP TABLE "JobTreatment";
ALTER TABLE "new_JobTreatment" RENAME TO "JobTreatment";
CREATE INDEX "JobTreatment_jobId_idx" ON "JobTreatment"("jobId");
PRAGMA foreign_keys=ON;
PRAGMA defer_foreign_keys=OFF;
