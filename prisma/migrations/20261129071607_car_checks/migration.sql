-- CreateTable
CREATE TABLE "JobCheck" (
    "id" TEXT NOT NULL PRIMARY KEY,
    "jobId" TEXT NOT NULL,
    "position" INTEGER NOT NULL,
    "moment" TEXT NOT NULL,
    "words" TEXT NOT NULL,
    "doneBy" TEXT,
    "doneAt" INTEGER,
    CONSTRAINT "JobCheck_jobId_fkey" FOREIGN KEY ("jobId") REFERENCES "Job" ("id") ON DELETE RESTRICT ON UPDATE CASCADE
);

-- RedefineTables
PRAGMA defer_foreign_keys=ON;
PRAGMA foreign_keys=OFF;
CREATE TABLE "new_Treatment" (
    "id" TEXT NOT NULL PRIMARY KEY,
    "name" TEXT NOT NULL,
    "position" INTEGER NOT NULL,
    "summary" TEXT NOT NULL DEFAULT '',
    "prices" JSONB NOT NULL,
    "needsTwoPeople" BOOLEAN NOT NULL DEFAULT false,
    "checks" JSONB NOT NULL DEFAULT [],
    "archivedAt" INTEGER,
    "version" INTEGER NOT NULL DEFAULT 1
);
INSERT INTO "new_Treatment" ("archivedAt", "checks", "id", "name", "needsTwoPeople", "position", "prices", "summary", "version") SELECT "archivedAt", '[]', "id", "name", "needsTwoPeople", "position", "prices", "summary", "version" FROM "Treatment";
DROP TABLE "Treatment";
ALTER TABLE "new_Treatment" RENAME TO "Treatment";
PRAGMA foreign_keys=ON;
PRAGMA defer_foreign_keys=OFF;

-- CreateIndex
CREATE INDEX "JobCheck_jobId_idx" ON "JobCheck"("jobId");
