-- CreateTable
CREATE TABLE "Lendable" (
    "id" TEXT NOT NULL PRIMARY KEY,
    "name" TEXT NOT NULL,
    "kind" TEXT NOT NULL,
    "position" INTEGER NOT NULL,
    "archivedAt" INTEGER,
    "version" INTEGER NOT NULL DEFAULT 1
);

-- CreateTable
CREATE TABLE "JobLoan" (
    "id" TEXT NOT NULL PRIMARY KEY,
    "jobId" TEXT NOT NULL,
    "lendableId" TEXT NOT NULL,
    CONSTRAINT "JobLoan_jobId_fkey" FOREIGN KEY ("jobId") REFERENCES "Job" ("id") ON DELETE RESTRICT ON UPDATE CASCADE,
    CONSTRAINT "JobLoan_lendableId_fkey" FOREIGN KEY ("lendableId") REFERENCES "Lendable" ("id") ON DELETE RESTRICT ON UPDATE CASCADE
);

-- RedefineTables
PRAGMA defer_foreign_keys=ON;
PRAGMA foreign_keys=OFF;
CREATE TABLE "new_CrewMember" (
    "id" TEXT NOT NULL PRIMARY KEY,
    "name" TEXT NOT NULL,
    "position" INTEGER NOT NULL,
    "skills" JSONB NOT NULL,
    "noticeDays" INTEGER NOT NULL DEFAULT 0,
    "weekly" JSONB,
    "archivedAt" INTEGER,
    "version" INTEGER NOT NULL DEFAULT 1
);
INSERT INTO "new_CrewMember" ("archivedAt", "id", "name", "position", "skills", "version", "weekly") SELECT "archivedAt", "id", "name", "position", "skills", "version", "weekly" FROM "CrewMember";
DROP TABLE "CrewMember";
ALTER TABLE "new_CrewMember" RENAME TO "CrewMember";
PRAGMA foreign_keys=ON;
PRAGMA defer_foreign_keys=OFF;

-- CreateIndex
CREATE INDEX "JobLoan_lendableId_idx" ON "JobLoan"("lendableId");

-- CreateIndex
CREATE UNIQUE INDEX "JobLoan_jobId_lendableId_key" ON "JobLoan"("jobId", "lendableId");
